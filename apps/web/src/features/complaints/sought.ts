import type { Sought } from './queries.ts';

interface Known {
  plantId: string;
  customerId: string | null;
  customerRef: string | null;
  title: string;
  housingId: string | null;
  terminalId: string | null;
  lots: readonly string[];
  effect: Sought['effect'] | null;
}

/** What similar cases are sought by; nothing until enough is known to tell cases apart. */
export function soughtBy(known: Known, except?: string): Sought | null {
  const { plantId, customerId, customerRef, title, housingId, terminalId, lots, effect } = known;
  const told = customerRef || housingId || terminalId || lots.length > 0 || title.trim().length >= 8;
  if (plantId === '' || !told) return null;
  return {
    plantId,
    ...(customerId && { customerId }),
    ...(customerRef && { customerRef }),
    ...(housingId && { housingId }),
    ...(terminalId && { terminalId }),
    ...(lots.length > 0 && { lots: [...lots] }),
    ...(effect && { effect }),
    ...(title.trim() && { text: title.trim() }),
    ...(except && { except }),
  };
}
