import { type ReplyTimes, usualReplyTimes } from '#contracts/reply-times.ts';
import type { PlantCode } from './plants.ts';

export interface CustomerPlan {
  code: string;
  name: string;
  locale: 'en' | 'de';
  paper: 'A4' | 'Letter';
  /** currency of what it charges */
  currency: string;
  /** plants that deliver to it */
  plants: readonly PlantCode[];
}

export const customers: readonly CustomerPlan[] = [
  { code: 'ALF', name: 'Alderfox Vehicles', locale: 'de', paper: 'A4', currency: 'EUR', plants: ['LEJ', 'POZ'] },
  { code: 'BIM', name: 'Birchmoth Appliances', locale: 'en', paper: 'A4', currency: 'EUR', plants: ['POZ', 'SUZ'] },
  { code: 'CBW', name: 'Cobaltwren Trucks', locale: 'en', paper: 'Letter', currency: 'USD', plants: ['QRO', 'TOL'] },
  { code: 'DUN', name: 'Dunlarkin Medical Devices', locale: 'en', paper: 'Letter', currency: 'USD', plants: ['TOL'] },
  { code: 'EMQ', name: 'Emberquoll Energy Storage', locale: 'en', paper: 'A4', currency: 'CNY', plants: ['SUZ'] },
  { code: 'FHG', name: 'Fernhedge Tractors', locale: 'de', paper: 'A4', currency: 'EUR', plants: ['LEJ'] },
  { code: 'GLR', name: 'Gildrobin Lighting', locale: 'en', paper: 'Letter', currency: 'USD', plants: ['QRO', 'SUZ'] },
  { code: 'HFR', name: 'Harrowfinch Rail', locale: 'en', paper: 'A4', currency: 'EUR', plants: ['LEJ', 'POZ'] },
];

/** Two customers are stricter than the rest. */
export const replyTimesOf = (code: string): ReplyTimes =>
  code === 'ALF' || code === 'DUN'
    ? { ...usualReplyTimes, first_reply: { amount: 8, unit: 'hours' }, cause: { amount: 5, unit: 'days' } }
    : usualReplyTimes;
