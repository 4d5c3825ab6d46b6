/** Leva in the bench's tokens: they change with the theme, so leva's own need not. */
export const levaTheme = {
  colors: {
    elevation1: 'transparent',
    elevation2: 'transparent',
    elevation3: 'var(--paper)',
    accent1: 'var(--accent)',
    accent2: 'var(--accent)',
    accent3: 'var(--accent)',
    highlight1: 'var(--ink-soft)',
    highlight2: 'var(--ink-soft)',
    highlight3: 'var(--ink)',
    vivid1: 'var(--near)',
  },
  fonts: { mono: 'var(--font)', sans: 'var(--font)' },
  fontSizes: { root: '14px' },
  space: { sm: '0px', md: '0px', rowGap: '10px', colGap: '8px' },
  radii: { xs: '4px', sm: '6px', lg: '0px' },
  shadows: { level1: 'none', level2: 'var(--shadow)' },
};
