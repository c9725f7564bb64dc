import type { Cause } from '#contracts/taxonomy.ts';

export type Language = 'en' | 'de' | 'es' | 'pl' | 'zh';
export type PlantCode = 'LEJ' | 'POZ' | 'QRO' | 'SUZ' | 'TOL';

export interface PlantPlan {
  code: PlantCode;
  name: string;
  zone: string;
  currency: string;
  weekStart: number;
  locale: 'en' | 'de';
  paper: 'A4' | 'Letter';
  /** what most notes are written in */
  language: Language;
  /** production against the average plant */
  volume: number;
  /** what an hour or a part costs here, against the first plant */
  costLevel: number;
  /** share of a weekday's production built on Saturdays */
  saturday: number;
  shifts: readonly [string, string, string];
  /** where the plant fails more or less than the group, by cause */
  habits: Partial<Record<Cause, number>>;
}

export const group = { name: 'Thistlecrane Harness Group', currency: 'EUR' };

export const plants: readonly PlantPlan[] = [
  {
    code: 'LEJ',
    name: 'Leipzig',
    zone: 'Europe/Berlin',
    currency: 'EUR',
    weekStart: 1,
    locale: 'de',
    paper: 'A4',
    language: 'de',
    volume: 0.85,
    costLevel: 1,
    saturday: 0,
    shifts: ['Früh', 'Spät', 'Nacht'],
    habits: { tooling: 0.8, wire_dress: 0.7, partial_seat: 0.75 },
  },
  {
    code: 'POZ',
    name: 'Poznań',
    zone: 'Europe/Warsaw',
    currency: 'PLN',
    weekStart: 1,
    locale: 'en',
    paper: 'A4',
    language: 'pl',
    volume: 1.05,
    costLevel: 0.62,
    saturday: 0,
    shifts: ['I', 'II', 'III'],
    habits: { handling: 1.25, component: 1.2 },
  },
  {
    code: 'QRO',
    name: 'Querétaro',
    zone: 'America/Mexico_City',
    currency: 'MXN',
    weekStart: 1,
    locale: 'en',
    paper: 'Letter',
    language: 'es',
    volume: 1.3,
    costLevel: 0.42,
    saturday: 0.5,
    shifts: ['1', '2', '3'],
    habits: { misinsertion: 1.3, handling: 0.9, tooling: 1.1 },
  },
  {
    code: 'SUZ',
    name: 'Suzhou',
    zone: 'Asia/Shanghai',
    currency: 'CNY',
    weekStart: 1,
    locale: 'en',
    paper: 'A4',
    language: 'zh',
    volume: 1.15,
    costLevel: 0.48,
    saturday: 0.6,
    shifts: ['A', 'B', 'C'],
    habits: { partial_seat: 1.1, tooling: 1.15, adhesive: 0.6 },
  },
  {
    code: 'TOL',
    name: 'Toledo, Ohio',
    zone: 'America/New_York',
    currency: 'USD',
    weekStart: 7,
    locale: 'en',
    paper: 'Letter',
    language: 'en',
    volume: 0.65,
    costLevel: 1.15,
    saturday: 0,
    shifts: ['Day', 'Evening', 'Night'],
    habits: { wire_dress: 1.4, application_limit: 1.5 },
  },
];
