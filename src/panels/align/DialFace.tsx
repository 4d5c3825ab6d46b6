/** The face of a dial: 100 units square about its middle, 0 at the top, positive clockwise. */
const RIM = 40;
const BAND = 45;

function at(degrees: number, radius: number): string {
  const angle = (degrees * Math.PI) / 180;
  return `${(radius * Math.sin(angle)).toFixed(2)} ${(-radius * Math.cos(angle)).toFixed(2)}`;
}

function arc(from: number, to: number, radius: number): string {
  const sweep = to > from ? 1 : 0;
  return `M${at(from, radius)}A${radius} ${radius} 0 0 ${sweep} ${at(to, radius)}`;
}

function Marks({ divisions }: { readonly divisions: number }) {
  const isClose = divisions > 40;
  const marks = Array.from({ length: divisions }, (_, i) => (360 * i) / divisions);
  return marks.map((degrees) => (
    <path
      key={degrees}
      className="dial-mark"
      d={`M${at(degrees, isClose ? 36 : 34)}L${at(degrees, RIM)}`}
    />
  ));
}

/** From here on a degree of turn does less than a third of what it does in the middle: cos 71° = 0.33. */
const DEAD = 71;

/** Working range of a cam, ±90°, and near its ends where it hardly moves anything any more. */
function Range() {
  return (
    <>
      <path className="dial-past" d={`${arc(90, 270, RIM)}Z`} />
      <path className="dial-range" d={arc(-DEAD, DEAD, BAND)} />
      <path className="dial-dead" d={arc(-90, -DEAD, BAND)} />
      <path className="dial-dead" d={arc(DEAD, 90, BAND)} />
      <path className="dial-slot" d="M-30 0H30" />
    </>
  );
}

/** A cam's face shows where its pivot stands along the slot; a rod's shows the flats of one turn. */
export function DialFace({
  divisions,
  isCam,
}: {
  readonly divisions: number | null;
  readonly isCam: boolean;
}) {
  return (
    <svg viewBox="-50 -50 100 100" className="dial-face" aria-hidden="true" focusable="false">
      <circle className="dial-plate" r={RIM} />
      {isCam && <Range />}
      {divisions !== null && divisions <= 120 && <Marks divisions={divisions} />}
      {isCam && <path className="dial-middle" d="M0 -48V-42" />}
      <g data-part="hand">
        {isCam ? (
          <>
            <circle className="dial-washer" r="22" cy="-4" />
            <path className="dial-hand" d={`M0 -14V-${RIM - 2}`} />
          </>
        ) : (
          <>
            <path className="dial-washer" d={hexagon(22)} />
            <path className="dial-hand" d={`M0 -15V-${RIM - 2}`} />
          </>
        )}
      </g>
      {isCam && <circle className="dial-bolt" r="5" data-part="bolt" />}
    </svg>
  );
}

function hexagon(radius: number): string {
  const corners = [30, 90, 150, 210, 270, 330].map((degrees) => at(degrees, radius));
  return `M${corners.join('L')}Z`;
}
