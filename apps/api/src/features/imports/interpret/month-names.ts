/** Month by its first letters in English and German; longer forms and a closing point are taken too. */
const months: Record<string, number> = {
  jan: 1,
  feb: 2,
  mar: 3,
  mär: 3,
  mrz: 3,
  mae: 3,
  apr: 4,
  may: 5,
  mai: 5,
  jun: 6,
  jul: 7,
  aug: 8,
  sep: 9,
  oct: 10,
  okt: 10,
  nov: 11,
  dec: 12,
  dez: 12,
};
const full = [
  'january',
  'february',
  'march',
  'april',
  'may',
  'june',
  'july',
  'august',
  'september',
  'october',
  'november',
  'december',
  'januar',
  'jänner',
  'jaenner',
  'februar',
  'märz',
  'maerz',
  'mai',
  'juni',
  'juli',
  'oktober',
  'dezember',
  'sept',
];

export function monthOf(word: string): number | null {
  const name = word.toLowerCase().replace(/\.$/, '');
  if (name.length > 3 && !full.includes(name)) return null;
  return months[name.slice(0, 3)] ?? (name.startsWith('jän') ? 1 : null);
}
