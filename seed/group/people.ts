import type { Role } from '#contracts/permissions.ts';
import { type PlantCode, plants } from './plants.ts';

export interface PersonPlan {
  name: string;
  email: string;
  locale: 'en' | 'de';
  role: Role;
  /** null: all plants */
  plant: PlantCode | null;
}

/** For the demo only; everybody may read it. */
export const demoPassword = 'harness-demo-2468';

const ofGroup = (role: Role, name: string): PersonPlan => ({
  name,
  email: `${role}@example.test`,
  locale: 'en',
  role,
  plant: null,
});

export const people: readonly PersonPlan[] = [
  ofGroup('administrator', 'Group administrator'),
  ofGroup('manager', 'Group quality manager'),
  ofGroup('engineer', 'Corporate engineer'),
  ofGroup('viewer', 'Group viewer'),
  ofGroup('inspector', 'Travelling inspector'),
  ...plants.flatMap(({ code, name, locale }) =>
    (['manager', 'engineer', 'inspector'] as const).map((role) => ({
      name: `${{ manager: 'Quality manager', engineer: 'Quality engineer', inspector: 'Inspector' }[role]} ${name}`,
      email: `${role}.${code.toLowerCase()}@example.test`,
      locale,
      role,
      plant: code,
    })),
  ),
];
