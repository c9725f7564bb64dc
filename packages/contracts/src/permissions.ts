/** Who may do what: the one table. A role is granted for one plant or for all. */
export const roles = ['viewer', 'inspector', 'engineer', 'manager', 'administrator'] as const;
export type Role = (typeof roles)[number];

const everyone = roles;
const recorders = ['inspector', 'engineer', 'manager', 'administrator'] as const;
const engineers = ['engineer', 'manager', 'administrator'] as const;
const managers = ['manager', 'administrator'] as const;
const administrators = ['administrator'] as const;

export const permissions = {
  'failures.read': everyone,
  'failures.write': recorders,
  'failures.sort': engineers,
  'failures.void': managers,
  'production.read': everyone,
  'production.write': engineers,
  'imports.read': engineers,
  'imports.run': engineers,
  'masterData.read': everyone,
  'plantData.write': managers,
  'groupData.write': administrators,
  'analyses.read': everyone,
  'signals.write': engineers,
  'whatIf.write': engineers,
  'force.read': everyone,
  'force.write': recorders,
  'reviews.read': everyone,
  'reviews.write': managers,
  'complaints.read': everyone,
  'complaints.write': engineers,
  'complaints.consent': managers,
  'containment.read': everyone,
  'containment.write': engineers,
  'cases.read': everyone,
  'cases.write': engineers,
  'cases.sign': managers,
  'actions.read': everyone,
  'actions.write': engineers,
  'audit.read': managers,
  'people.read': administrators,
  'people.write': administrators,
  'tokens.write': administrators,
} as const satisfies Record<string, readonly Role[]>;

export type Permission = keyof typeof permissions;

/** Routes that need no role: `public` needs no sign-in, `signed-in` needs any account. */
export type Access = Permission | 'public' | 'signed-in';

export const allows = (permission: Permission, role: Role): boolean =>
  (permissions[permission] as readonly Role[]).includes(role);
