import type { z } from 'zod';
import type { ToolKind } from '#contracts/taxonomy.ts';
import type { LineCode } from './lines.ts';
import type { PlantCode } from './plants.ts';

export interface ToolPlan {
  code: string;
  name: string;
  kind: z.infer<typeof ToolKind>;
  type: string | null;
  serviceInterval: number | null;
}

/** Tool type that a terminal of this size is approved for. */
export const toolTypeOf = (size: number): string => `${size === 800 ? 'CD' : 'AT'}-${String(size).padStart(3, '0')}`;

const applicator = (size: number, number: number): ToolPlan => ({
  code: `AP-${String(size).padStart(3, '0')}-${number}`,
  name: `Applicator ${(size / 100).toFixed(2)} mm no. ${number}`,
  kind: 'applicator',
  type: toolTypeOf(size),
  serviceInterval: size > 300 ? 300_000 : 500_000,
});
const other = (code: string, name: string, kind: ToolPlan['kind'], interval: number | null): ToolPlan => ({
  code,
  name,
  kind,
  type: kind === 'crimp_die' ? toolTypeOf(800) : null,
  serviceInterval: interval,
});

/** The same sixteen at every plant; the worn applicator of Poznań has a successor. */
const common: readonly ToolPlan[] = [
  ...[64, 120, 150, 280].flatMap((size) => [applicator(size, 1), applicator(size, 2)]),
  applicator(480, 1),
  applicator(630, 1),
  other('CD-800-1', 'Crimp die 8.00 mm', 'crimp_die', 100_000),
  other('HT-01', 'Hand tool for samples and rework', 'hand_tool', 5_000),
  other('RT-01', 'Removal tool set', 'removal_tool', 2_000),
  other('TF-1', 'Test fixture, lines 1 and 2', 'test_fixture', 250_000),
  other('TF-2', 'Test fixture, lines 3 and 4', 'test_fixture', 250_000),
  other('TF-3', 'Test fixture, line 5', 'test_fixture', 250_000),
];
export const toolsOf = (plant: PlantCode): readonly ToolPlan[] =>
  plant === 'POZ' ? [...common, applicator(150, 3)] : common;

/** Plant and code of tools whose service is overdue on the anchor day. */
export const overdueTools = ['LEJ TF-3', 'POZ AP-280-1', 'QRO AP-064-2', 'QRO RT-01', 'SUZ AP-480-1', 'TOL TF-2'];

export function fixtureOf(line: LineCode): string {
  return { L1: 'TF-1', L2: 'TF-1', L3: 'TF-2', L4: 'TF-2', L5: 'TF-3' }[line];
}

/** Applicator that crimps a terminal size for a line; lines 3 and 4 share the second of a size where there are two. */
export function applicatorOf(line: LineCode, size: number): string {
  if (size === 800) return 'CD-800-1';
  const second = size < 300 && (line === 'L3' || line === 'L4');
  return `AP-${String(size).padStart(3, '0')}-${second ? 2 : 1}`;
}
