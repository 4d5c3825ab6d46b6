/** What to mind where a vehicle is set by these numbers. Common practice, no source. */
export function Cautions() {
  return (
    <section aria-label="Cautions" className="align-cautions">
      <h3>Mind</h3>
      <ul>
        <li>
          Caster and camber together first, toe last, on both sides; keep left and right within
          about half a degree.
        </li>
        <li>
          Set it at ride height and let the springs settle before it is read. Tighten cams, jam nuts
          and sleeve clamps by the vehicle maker’s figures, and read again after.
        </li>
        <li>
          Check by hand at both locks: hoses, wires, stick-on weights, and that enough thread is
          left in the tie rod.
        </li>
        <li>
          Rigid parts, no bush compliance, no joint play. Steering carries lives: licensed alignment
          and local vehicle codes come first.
        </li>
      </ul>
    </section>
  );
}
