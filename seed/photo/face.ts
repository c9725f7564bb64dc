import type { Cause } from '#contracts/taxonomy.ts';
import { cavitiesOf, type HousingPlan } from '../group/parts.ts';

const cell = 84;
const margin = 70;

type Draw = (x: number, y: number) => string;
const rect = (x: number, y: number, width: number, height: number, fill: string, more = '') =>
  `<rect x="${x}" y="${y}" width="${width}" height="${height}" rx="6" fill="${fill}" ${more}/>`;
const line = (from: [number, number], to: [number, number], colour: string, width: number) =>
  `<path d="M${from.join(' ')} L${to.join(' ')}" stroke="${colour}" stroke-width="${width}" stroke-linecap="round"/>`;

const contact: Draw = (x, y) => rect(x + 26, y + 22, 32, 40, '#b9a46a') + rect(x + 34, y + 30, 16, 24, '#6f6238');

/** What can be seen at the cavity of a fault, by its cause; without words, so that no font is needed. */
const finding: Record<Cause, Draw> = {
  tooling: (x, y) => `<g transform="rotate(14 ${x + 42} ${y + 42})">${contact(x, y - 6)}</g>`,
  handling: (x, y) => contact(x, y) + line([x + 24, y + 18], [x + 60, y + 26], '#8d7a3f', 6),
  partial_seat: (x, y) => rect(x + 32, y + 32, 20, 24, '#8d7c48') + rect(x + 37, y + 38, 10, 12, '#4c4326'),
  misinsertion: (x, y) =>
    `<g transform="rotate(180 ${x + 42} ${y + 42})">${contact(x, y + 6)}</g>${rect(x + 16, y + 10, 52, 8, '#e8e8e4')}`,
  probe_damage: (x, y) =>
    `${rect(x + 18, y + 22, 48, 40, '#b9a46a')}<circle cx="${x + 42}" cy="${y + 42}" r="13" fill="#3d3622"/>`,
  wire_dress: (x, y) =>
    `<g transform="translate(${x + 42} ${y + 42}) skewX(-16) translate(-42 -42)">${contact(8, 0)}</g>`,
  adhesive: (x, y) =>
    `${contact(x, y)}<ellipse cx="${x + 42}" cy="${y + 56}" rx="34" ry="20" fill="#d8ecf2" opacity="0.75"/>`,
  component: (x, y) => contact(x, y) + rect(x + 12, y + 10, 26, 14, '#79848a'),
  application_limit: (x, y) => rect(x + 30, y + 28, 24, 30, '#9a8a55'),
  undetermined: contact,
};

/** The face of a housing, drawn, with the fault at one cavity. */
export function faceSvg(housing: HousingPlan, mark: string, cause: Cause): string {
  const width = housing.columns * cell + 2 * margin;
  const height = housing.rows * cell + 2 * margin;
  const cavities = cavitiesOf(housing).map((at) => {
    const x = margin + (Number(at.slice(1)) - 1) * cell;
    const y = margin + 'ABCDEFGH'.indexOf(at[0]!) * cell;
    const hole = rect(x + 8, y + 8, cell - 16, cell - 16, '#15191b');
    if (at !== mark) return hole + contact(x, y);
    const ring = rect(x + 2, y + 2, cell - 4, cell - 4, 'none', 'stroke="#e69f00" stroke-width="5"');
    return hole + finding[cause](x, y) + ring;
  });
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" viewBox="0 0 ${width} ${height}">
<rect width="100%" height="100%" fill="#8f9793"/>
${rect(margin - 34, margin - 34, width - 2 * margin + 68, height - 2 * margin + 68, '#3a4145')}
${rect(width / 2 - 40, 14, 80, 26, '#3a4145')}
${cavities.join('\n')}
</svg>`;
}
