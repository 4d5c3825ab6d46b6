/** The plot of a small chart: its ground, the lines of its ticks, their numbers and the axes' names. */

/** Ticks of an axis at their places in the chart. */
export interface GridAxis {
  readonly name: string;
  readonly ticks: readonly { readonly place: number; readonly text: string }[];
}

interface Props {
  /** Left, top, right, bottom. */
  readonly plot: readonly [number, number, number, number];
  readonly across: GridAxis;
  readonly up: GridAxis;
}

export function ChartGrid({ plot: [left, top, right, bottom], across, up }: Props) {
  return (
    <g>
      <rect className="region-plot" x={left} y={top} width={right - left} height={bottom - top} />
      {across.ticks.map(({ place, text }) => (
        <g key={text}>
          <path className="region-grid" d={`M${place} ${top}V${bottom}`} />
          <text className="region-tick" x={place} y={bottom + 15} textAnchor="middle">
            {text}
          </text>
        </g>
      ))}
      {up.ticks.map(({ place, text }) => (
        <g key={text}>
          <path className="region-grid" d={`M${left} ${place}H${right}`} />
          <text className="region-tick" x={left - 5} y={place + 4} textAnchor="end">
            {text}
          </text>
        </g>
      ))}
      <text className="region-name" x={(left + right) / 2} y={bottom + 32} textAnchor="middle">
        {across.name}
      </text>
      <text
        className="region-name"
        transform={`translate(11 ${(top + bottom) / 2}) rotate(-90)`}
        textAnchor="middle"
      >
        {up.name}
      </text>
    </g>
  );
}
