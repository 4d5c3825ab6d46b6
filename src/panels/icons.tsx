/** The bench's own small drawings; decoration beside words or a label, never the only sign. */

const PATHS = {
  play: 'M5 3.2 13 8l-8 4.8Z',
  pause: 'M4.2 3h2.8v10H4.2ZM9 3h2.8v10H9Z',
} as const;

const STROKES = {
  undo: 'M6.2 3.2 3 6.4l3.2 3.2M3.4 6.4h5.8a3.4 3.4 0 0 1 0 6.8H6.6',
  redo: 'm9.8 3.2 3.2 3.2-3.2 3.2M12.6 6.4H6.8a3.4 3.4 0 0 0 0 6.8h2.6',
  warn: 'M8 2.2 14.4 13.4H1.6ZM8 6.4v3.4M8 11.4v.6',
  clear: 'm3 8.6 3.2 3.2L13 4.6',
  touch: 'M3.4 3.4l9.2 9.2M12.6 3.4l-9.2 9.2',
  down: 'm3.6 6 4.4 4.4L12.4 6',
  close: 'm4 4 8 8M12 4l-8 8',
  sun: 'M8 5.2a2.8 2.8 0 1 1 0 5.6 2.8 2.8 0 0 1 0-5.6ZM8 1.4v1.4M8 13.2v1.4M1.4 8h1.4M13.2 8h1.4M3.3 3.3l1 1M11.7 11.7l1 1M12.7 3.3l-1 1M4.3 11.7l-1 1',
  moon: 'M13 9.6A5.6 5.6 0 0 1 6.4 3 5.6 5.6 0 1 0 13 9.6Z',
  help: 'M5.6 6a2.4 2.4 0 1 1 3.4 2.2c-.7.4-1 .8-1 1.6M8 12v.6',
  widen: 'M9.4 3.4 4.8 8l4.6 4.6M13 3v10',
  narrow: 'm5 3.4 4.6 4.6L5 12.6M13 3v10',
  menu: 'M2.6 4.4h10.8M2.6 8h10.8M2.6 11.6h10.8',
} as const;

export type IconName = keyof typeof PATHS | keyof typeof STROKES;

/** One drawing, 16 units square, in the colour of the text around it. */
export function Icon({ name, size = 16 }: { name: IconName; size?: number }) {
  const isFilled = name in PATHS;
  const path = isFilled ? PATHS[name as keyof typeof PATHS] : STROKES[name as keyof typeof STROKES];
  return (
    <svg
      aria-hidden="true"
      focusable="false"
      width={size}
      height={size}
      viewBox="0 0 16 16"
      fill={isFilled ? 'currentColor' : 'none'}
      stroke={isFilled ? 'none' : 'currentColor'}
      strokeWidth="1.7"
      strokeLinecap="round"
      strokeLinejoin="round"
    >
      <path d={path} />
    </svg>
  );
}

/** The sign of the bench: two arms and the wheel they carry, scribed on a plate. */
export function Mark() {
  return (
    <svg
      aria-hidden="true"
      focusable="false"
      width="26"
      height="26"
      viewBox="0 0 26 26"
      fill="none"
      stroke="currentColor"
      strokeWidth="2"
      strokeLinecap="round"
    >
      <path d="M3 19.5 17.5 18M5.5 7.5 16 8.5" />
      <path d="M17.5 18 16 8.5" stroke="var(--accent)" />
      <path d="M22.5 3.5v19" strokeWidth="3.4" />
      <circle cx="17.5" cy="18" r="1.9" fill="var(--card-solid)" />
      <circle cx="16" cy="8.5" r="1.9" fill="var(--card-solid)" />
    </svg>
  );
}
