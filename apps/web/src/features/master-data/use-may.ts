import type { Me } from '#contracts/people.ts';
import { may, usePerson } from '#web/ui/person.ts';
import type { KindView } from './kinds.ts';

/** True where the person may change rows of the kind: of that plant, of any plant, or of the group. */
const mayChange = (person: Me, { resource }: KindView, plantId?: string): boolean =>
  resource.write === 'groupData.write'
    ? person.permissions['groupData.write'] === 'all'
    : may(person, resource.write, plantId);

export const useMayAdd = (view: KindView): boolean => mayChange(usePerson(), view);
export const useMayChange = (view: KindView, plantId: unknown): boolean =>
  mayChange(usePerson(), view, typeof plantId === 'string' && plantId !== '' ? plantId : undefined);
