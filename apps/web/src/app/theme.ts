/** Our palette and type scale; the only file that names a colour of the interface or of a chart. */
import { type CSSVariablesResolver, createTheme, type MantineColorsTuple } from '@mantine/core';
import type { Cause } from '#contracts/taxonomy.ts';

/** Deep petrol, the colour of everything that can be pressed. */
const petrol: MantineColorsTuple = [
  '#eaf3f5',
  '#d5e5ea',
  '#aecdd6',
  '#82b1be',
  '#5b95a5',
  '#3b7c8e',
  '#1f6478',
  '#175365',
  '#124353',
  '#17323f',
];

export const ink = {
  strong: '#17242b',
  plain: '#2b3a42',
  quiet: '#566570',
  rule: '#d8ddd9',
  ruleStrong: '#a9b3b1',
  sheet: '#ffffff',
  paper: '#f3f4ef',
  wash: '#eaf3f5',
  booked: '#1f6478',
  estimated: '#9a6a00',
  worse: '#a33b00',
  better: '#00664a',
} as const;

export const theme = createTheme({
  primaryColor: 'petrol',
  primaryShade: 6,
  colors: { petrol },
  black: ink.strong,
  fontFamily: 'system-ui, "Segoe UI", "Noto Sans", "DejaVu Sans", sans-serif',
  headings: {
    fontWeight: '650',
    sizes: {
      h1: { fontSize: '1.75rem', lineHeight: '1.2' },
      h2: { fontSize: '1.25rem', lineHeight: '1.3' },
      h3: { fontSize: '1.0625rem', lineHeight: '1.35' },
    },
  },
  fontSizes: { xs: '0.8125rem', sm: '0.9375rem', md: '1rem', lg: '1.125rem', xl: '1.375rem' },
  defaultRadius: 'sm',
  respectReducedMotion: true,
  focusRing: 'auto',
  components: {
    // The placeholder is a child that a menu may not have for assistive technology; the first item takes the focus instead.
    Menu: { defaultProps: { withInitialFocusPlaceholder: false } },
  },
});

/** The palette as CSS variables: `ink.ruleStrong` is `var(--ink-rule-strong)`. */
export const cssVariables: CSSVariablesResolver = () => ({
  variables: Object.fromEntries(
    Object.entries(ink).map(([name, colour]) => [
      `--ink-${name.replace(/[A-Z]/g, (c) => `-${c.toLowerCase()}`)}`,
      colour,
    ]),
  ),
  light: {
    '--mantine-color-dimmed': ink.quiet,
    '--mantine-color-placeholder': ink.quiet,
    '--mantine-color-error': ink.worse,
  },
  dark: {},
});

/** Fill patterns, drawn on a canvas and in SVG alike; see `ui/chart/pattern.ts`. */
export type PatternName =
  | 'solid'
  | 'diagonal'
  | 'backDiagonal'
  | 'dots'
  | 'cross'
  | 'vertical'
  | 'horizontal'
  | 'rings'
  | 'grid'
  | 'chevron';
export interface Mark {
  readonly colour: string;
  readonly pattern: PatternName;
}

/**
 * One fixed colour and pattern per cause, everywhere. Colours: the eight of Okabe and Ito,
 * "Color Universal Design" (2008), and two greys for the causes at the margin.
 */
export const causeMarks: Readonly<Record<Cause, Mark>> = {
  tooling: { colour: '#D55E00', pattern: 'solid' },
  handling: { colour: '#E69F00', pattern: 'diagonal' },
  partial_seat: { colour: '#0072B2', pattern: 'horizontal' },
  misinsertion: { colour: '#56B4E9', pattern: 'dots' },
  probe_damage: { colour: '#CC79A7', pattern: 'cross' },
  wire_dress: { colour: '#009E73', pattern: 'backDiagonal' },
  adhesive: { colour: '#F0E442', pattern: 'vertical' },
  component: { colour: '#000000', pattern: 'chevron' },
  application_limit: { colour: '#5f6b73', pattern: 'grid' },
  undetermined: { colour: '#a8b0b4', pattern: 'rings' },
};

/** Bars that stand for anything but a cause. */
export const plainMark: Mark = { colour: '#3b7c8e', pattern: 'solid' };
/** Estimated money: never drawn like booked money. */
export const estimateMark: Mark = { colour: '#f3e3bd', pattern: 'diagonal' };
export const bookedMark: Mark = { colour: ink.booked, pattern: 'solid' };
/** The collected rest: never mistaken for a group of its own. */
export const otherMark: Mark = { colour: '#c3cacb', pattern: 'diagonal' };
