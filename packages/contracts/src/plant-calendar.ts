/** A plant's working hours and holidays, in which reply clocks run, and who answers there for product safety. */
import { z } from 'zod';
import { endpoint } from './shared/endpoint.ts';
import { Day, Id, IdParams, Name, Version } from './shared/scalars.ts';

const tag = 'plant calendar';

export const TimeOfDay = z.string().regex(/^([01]\d|2[0-3]):[0-5]\d$|^24:00$/, 'must be a time such as 07:30');
const Shift = z
  .tuple([TimeOfDay, TimeOfDay])
  .refine(([from, to]) => from < to, 'must end after it begins; split a night at midnight');
const WorkingDay = z
  .array(Shift)
  .max(4)
  .refine((shifts) => shifts.every(([from], index) => index === 0 || shifts[index - 1]![1] <= from), {
    message: 'must be in order and must not overlap',
  });
export const WorkingHours = z
  .array(WorkingDay)
  .length(7)
  .refine((days) => days.some((shifts) => shifts.length > 0), 'must have working time on at least one day')
  .describe('seven lists of [from, to] in plant time, Monday first');
export type WorkingHours = z.infer<typeof WorkingHours>;

/** Held until a plant states its own. Common practice, no source. */
export const usualHours: WorkingHours = [1, 2, 3, 4, 5, 6, 7].map((weekday) =>
  weekday <= 5 ? [['08:00', '16:30']] : [],
);

export const Holiday = z.object({ day: Day, name: Name });
const Calendar = z.object({
  hours: WorkingHours,
  holidays: z
    .array(Holiday)
    .max(1000)
    .refine((days) => new Set(days.map(({ day }) => day)).size === days.length, 'must name each day once'),
});
export const PlantCalendar = Calendar.extend({
  plantId: Id,
  usual: z.boolean().describe('nobody has stated hours for this plant yet: the usual ones hold'),
  version: Version,
});
export type PlantCalendar = z.infer<typeof PlantCalendar>;

export const readCalendar = endpoint({
  method: 'GET',
  path: '/api/v1/plants/:id/calendar',
  access: 'masterData.read',
  tag,
  summary: 'Working hours and holidays of a plant',
  params: IdParams,
  response: PlantCalendar,
});
export const saveCalendar = endpoint({
  method: 'PUT',
  path: '/api/v1/plants/:id/calendar',
  access: 'plantData.write',
  tag,
  summary: 'Set working hours and holidays; running reply clocks of the plant are reckoned anew',
  write: 'update',
  params: IdParams,
  body: Calendar,
  response: PlantCalendar,
});

export const ProductSafety = z.object({
  plantId: Id,
  personId: Id.nullable(),
  personName: z.string().nullable(),
  version: Version,
});
export type ProductSafety = z.infer<typeof ProductSafety>;
export const readProductSafety = endpoint({
  method: 'GET',
  path: '/api/v1/plants/:id/product-safety',
  access: 'masterData.read',
  tag,
  summary: 'The person responsible for product safety at a plant',
  params: IdParams,
  response: ProductSafety,
});
export const saveProductSafety = endpoint({
  method: 'PUT',
  path: '/api/v1/plants/:id/product-safety',
  access: 'plantData.write',
  tag,
  summary: 'Name the person responsible for product safety at a plant',
  write: 'update',
  params: IdParams,
  body: z.object({ personId: Id.nullable() }),
  response: ProductSafety,
});
