import type { z } from 'zod';
import type { RetentionStyle, SecondaryLockKind } from '#contracts/taxonomy.ts';

export interface TerminalPlan {
  code: string;
  name: string;
  style: z.infer<typeof RetentionStyle>;
  /** tab or pin size in hundredths of a millimetre: what fits what */
  size: number;
  wireMm2: readonly [number, number];
  minRetentionN: number;
}
export interface HousingPlan {
  code: string;
  name: string;
  rows: number;
  columns: number;
  missing: readonly string[];
  style: z.infer<typeof RetentionStyle>;
  lock: z.infer<typeof SecondaryLockKind>;
  safety: boolean;
  size: number;
}

const terminal = (
  number: number,
  style: 'L' | 'C',
  size: number,
  finish: string,
  wireMm2: [number, number],
  minRetentionN: number,
): TerminalPlan => ({
  code: `TC-${String(number).padStart(2, '0')}${style}`,
  name: `${(size / 100).toFixed(2)} mm ${style === 'L' ? 'lance' : 'clean-body'} contact, ${finish}`,
  style: style === 'L' ? 'terminal_lance' : 'housing_latch',
  size,
  wireMm2,
  minRetentionN,
});

/** L: locks by its own lance. C: clean body, held by a latch of the housing. */
export const terminals: readonly TerminalPlan[] = [
  terminal(1, 'C', 64, 'tin', [0.13, 0.35], 30),
  terminal(2, 'C', 64, 'gold', [0.13, 0.35], 30),
  terminal(3, 'C', 64, 'tin', [0.35, 0.5], 35),
  terminal(4, 'L', 64, 'tin', [0.22, 0.5], 40),
  terminal(5, 'L', 120, 'tin', [0.35, 0.75], 50),
  terminal(6, 'L', 120, 'silver', [0.5, 1], 50),
  terminal(7, 'C', 120, 'tin', [0.35, 0.75], 45),
  terminal(8, 'C', 120, 'tin, sealed', [0.5, 1], 45),
  terminal(9, 'L', 150, 'tin', [0.5, 1], 60),
  terminal(10, 'L', 150, 'tin', [1, 1.5], 60),
  terminal(11, 'C', 150, 'tin, sealed', [0.5, 1], 55),
  terminal(12, 'L', 280, 'tin', [0.75, 1.5], 70),
  terminal(13, 'L', 280, 'tin', [1.5, 2.5], 70),
  terminal(14, 'L', 280, 'silver', [1.5, 2.5], 70),
  terminal(15, 'C', 280, 'silver, sealed', [1, 2.5], 65),
  terminal(16, 'L', 480, 'tin', [1.5, 2.5], 90),
  terminal(17, 'L', 480, 'silver', [2.5, 6], 90),
  terminal(18, 'L', 630, 'silver', [2.5, 6], 100),
  terminal(19, 'C', 630, 'silver, sealed', [4, 10], 100),
  terminal(20, 'L', 800, 'silver', [10, 16], 140),
];

const housing = (
  number: number,
  [rows, columns]: [number, number],
  style: 'L' | 'C',
  size: number,
  lock: HousingPlan['lock'],
  name: string,
  { safety = false, missing = [] as string[] } = {},
): HousingPlan => ({
  code: `HX-${String(number).padStart(2, '0')}`,
  name: `${name}, ${rows * columns - missing.length} way`,
  rows,
  columns,
  missing,
  style: style === 'L' ? 'terminal_lance' : 'housing_latch',
  lock,
  safety,
  size,
});

export const housings: readonly HousingPlan[] = [
  housing(1, [2, 6], 'C', 64, 'two_piece', 'Door module receptacle'),
  housing(2, [2, 8], 'C', 64, 'two_piece', 'Seat module receptacle'),
  housing(3, [4, 12], 'C', 64, 'preassembled', 'Control unit receptacle', { missing: ['A1', 'D12'] }),
  housing(4, [2, 10], 'C', 64, 'separate', 'Cluster receptacle'),
  housing(5, [2, 4], 'L', 64, 'separate', 'Sensor plug'),
  housing(6, [1, 6], 'L', 64, 'none', 'Panel lamp plug'),
  housing(7, [2, 2], 'L', 120, 'separate', 'Restraint squib plug', { safety: true }),
  housing(8, [2, 6], 'L', 120, 'separate', 'Roof harness plug'),
  housing(9, [3, 6], 'L', 120, 'preassembled', 'Floor harness plug'),
  housing(10, [1, 4], 'C', 120, 'two_piece', 'Wheel speed plug, sealed', { safety: true }),
  housing(11, [2, 5], 'C', 120, 'preassembled', 'Engine bay plug, sealed'),
  housing(12, [1, 2], 'C', 120, 'separate', 'Washer pump plug, sealed'),
  housing(13, [3, 8], 'L', 150, 'separate', 'Rear body receptacle'),
  housing(14, [2, 3], 'L', 150, 'none', 'Lamp holder'),
  housing(15, [2, 4], 'L', 150, 'preassembled', 'Steering column plug', { safety: true }),
  housing(16, [1, 3], 'C', 150, 'two_piece', 'Pressure sensor plug, sealed', { safety: true }),
  housing(17, [1, 6], 'L', 280, 'separate', 'Appliance board edge plug'),
  housing(18, [2, 2], 'L', 280, 'none', 'Motor plug'),
  housing(19, [2, 4], 'L', 280, 'separate', 'Compressor plug'),
  housing(20, [1, 4], 'C', 280, 'two_piece', 'Outdoor unit plug, sealed'),
  housing(21, [1, 3], 'L', 480, 'none', 'Heater plug', { safety: true }),
  housing(22, [2, 3], 'L', 480, 'separate', 'Fuse box plug'),
  housing(23, [1, 2], 'L', 630, 'none', 'Mains inlet plug', { safety: true }),
  housing(24, [1, 3], 'C', 630, 'two_piece', 'Drive inverter plug, sealed', { safety: true }),
  housing(25, [1, 2], 'L', 800, 'separate', 'Battery plug', { safety: true }),
  housing(26, [2, 6], 'L', 280, 'preassembled', 'Tractor cab receptacle', { missing: ['B6'] }),
];

/** Code, name, cross-section in mm², outer diameter in mm. */
export const wires: readonly (readonly [string, string, number, number])[] = [
  ['W-013', 'Thin-wall 0.13 mm²', 0.13, 0.95],
  ['W-022', 'Thin-wall 0.22 mm²', 0.22, 1.15],
  ['W-035', 'Thin-wall 0.35 mm²', 0.35, 1.3],
  ['W-050', 'Thin-wall 0.5 mm²', 0.5, 1.5],
  ['W-075', 'Thin-wall 0.75 mm²', 0.75, 1.8],
  ['W-100', 'Thin-wall 1 mm²', 1, 2],
  ['W-150', 'Thin-wall 1.5 mm²', 1.5, 2.3],
  ['W-250', 'Thin-wall 2.5 mm²', 2.5, 2.9],
  ['W-400', 'Thick-wall 4 mm²', 4, 3.9],
  ['W-600', 'Thick-wall 6 mm²', 6, 4.6],
  ['W-1000', 'Thick-wall 10 mm²', 10, 6],
  ['W-1600', 'Thick-wall 16 mm²', 16, 7.4],
];

/** Cavity marks of a face: row letter and column number, A1 top left. */
export const cavitiesOf = ({ rows, columns, missing }: HousingPlan): string[] =>
  Array.from(
    { length: rows * columns },
    (_, at) => `${'ABCDEFGH'[Math.floor(at / columns)]}${(at % columns) + 1}`,
  ).filter((mark) => !missing.includes(mark));
