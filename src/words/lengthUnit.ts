/** How lengths are shown: mm, decimal inches, or inches to the nearest 1/16. */
export type LengthUnit = 'mm' | 'inch' | 'sixteenth';
