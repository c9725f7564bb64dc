/** Who is signed in, and what they may do where. The API decides; this only hides what would be refused. */
import { queryOptions, useSuspenseQuery } from '@tanstack/react-query';
import { type Me, me } from '#contracts/people.ts';
import type { Permission } from '#contracts/permissions.ts';
import { call } from './http.ts';

export const meQuery = queryOptions({
  queryKey: ['session'],
  queryFn: ({ signal }) => call(me, { signal }),
  staleTime: 5 * 60_000,
});

/** True where the person holds the permission for that plant, or, without a plant, for any. */
export const may = (person: Me, permission: Permission, plantId?: string): boolean => {
  const where = person.permissions[permission];
  if (where === undefined) return false;
  if (where === 'all') return true;
  return plantId === undefined ? where.length > 0 : where.includes(plantId);
};

/** Only below the signed-in root, where the person is already known. */
export const usePerson = (): Me => useSuspenseQuery(meQuery).data;
export const useMay = (permission: Permission, plantId?: string): boolean => may(usePerson(), permission, plantId);
