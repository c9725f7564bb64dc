import { isoDay } from '../calendar.ts';
import { people } from '../group/people.ts';
import type { World } from '../world.ts';
import type { Table } from './row.ts';

export function peopleTables({ id, start }: World, passwordHash: string): Table[] {
  return [
    {
      name: 'person',
      rows: people.map(({ name, email, locale }) => ({
        id: id(`person ${email}`),
        ...{ name, email, locale, password_hash: passwordHash, must_change_password: false },
        created_at: `${isoDay(start)}T00:00:00Z`,
      })),
    },
    {
      name: 'role_grant',
      rows: people.map(({ email, role, plant }) => ({
        id: id(`role_grant ${email}`),
        person_id: id(`person ${email}`),
        role,
        plant_id: plant && id(`plant ${plant}`),
      })),
    },
  ];
}
