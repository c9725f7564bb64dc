/** The kinds in the order of the page: the group and its places, its parts, its money. */
export const kindGroups = {
  places: ['group', 'plants', 'lines', 'stages', 'tools', 'customers'],
  parts: ['housings', 'terminals', 'wires'],
  money: ['standard-costs', 'cost-rates', 'exchange-rates'],
} as const;

export type KindName = (typeof kindGroups)[keyof typeof kindGroups][number];
const names: readonly string[] = Object.values(kindGroups).flat();
export const isKindName = (word: string): word is KindName => names.includes(word);
