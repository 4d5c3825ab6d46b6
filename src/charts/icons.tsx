/** Small drawings for the charts' buttons. */
import type { ReactNode } from 'react';

function Icon({ children }: { readonly children: ReactNode }) {
  return (
    <svg
      width="16"
      height="16"
      viewBox="0 0 16 16"
      fill="none"
      stroke="currentColor"
      strokeWidth="1.6"
      strokeLinecap="round"
      strokeLinejoin="round"
      aria-hidden="true"
    >
      {children}
    </svg>
  );
}

/** A glass over a spot. */
export function CloseUpIcon() {
  return (
    <Icon>
      <circle cx="6.8" cy="6.8" r="4.6" />
      <path d="m10.3 10.3 4 4M6.8 5v3.600M5 6.800h3.600" />
    </Icon>
  );
}

export function CurvesIcon() {
  return (
    <Icon>
      <path d="M1.5 1.5v13h13" />
      <path d="M3.5 11c3-.5 4-7 10-7.5" />
    </Icon>
  );
}

export function EnlargeIcon() {
  return (
    <Icon>
      <path d="M9.5 2h4.5v4.5M6.5 14H2V9.5M14 2 9.5 6.5M2 14l4.5-4.5" />
    </Icon>
  );
}

export function ReduceIcon() {
  return (
    <Icon>
      <path d="M14 6.5H9.5V2M2 9.5h4.5V14M9.5 6.5 14 2M6.5 9.5 2 14" />
    </Icon>
  );
}

export function WorstIcon() {
  return (
    <Icon>
      <circle cx="8" cy="8" r="4" />
      <path d="M8 1v3M8 12v3M1 8h3M12 8h3" />
    </Icon>
  );
}

export function CloseIcon() {
  return (
    <Icon>
      <path d="M3.5 3.5l9 9M12.5 3.5l-9 9" />
    </Icon>
  );
}
