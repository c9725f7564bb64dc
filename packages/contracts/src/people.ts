/** Accounts, sign-in, roles by plant, API tokens. */
import { z } from 'zod';
import { type Permission, permissions, roles } from './permissions.ts';
import { endpoint } from './shared/endpoint.ts';
import { PageQuery, page } from './shared/paging.ts';
import { Id, IdParams, Instant, Locale, Name, Version } from './shared/scalars.ts';

const tag = 'people';
export const Role = z.enum(roles);
export const Email = z
  .email()
  .max(200)
  .transform((email) => email.toLowerCase());
export const Password = z.string().min(12, 'must have at least 12 characters').max(200);

/** A role for one plant, or for all plants where `plantId` is null. */
export const Grant = z.object({ role: Role, plantId: Id.nullable() });
export type Grant = z.infer<typeof Grant>;

export const Me = z.object({
  id: Id,
  name: z.string(),
  email: z.string(),
  locale: Locale,
  mustChangePassword: z.boolean(),
  grants: z.array(Grant),
  permissions: z
    .record(z.string(), z.union([z.literal('all'), z.array(Id)]))
    .describe('permission → plants where it holds'),
});
export type Me = z.infer<typeof Me>;

export const signIn = endpoint({
  method: 'POST',
  path: '/api/v1/session',
  access: 'public',
  tag,
  summary: 'Sign in; sets the session cookie',
  body: z.object({ email: Email, password: z.string().min(1).max(200) }),
  response: Me,
});
export const signOut = endpoint({
  method: 'DELETE',
  path: '/api/v1/session',
  access: 'signed-in',
  tag,
  summary: 'Sign out',
  status: 204,
});
export const me = endpoint({
  method: 'GET',
  path: '/api/v1/session',
  access: 'signed-in',
  tag,
  summary: 'Who is signed in, and what they may do',
  response: Me,
});
export const changePassword = endpoint({
  method: 'PUT',
  path: '/api/v1/session/password',
  access: 'signed-in',
  tag,
  summary: 'Change the own password; ends the other sessions',
  body: z.object({ current: z.string().min(1).max(200), next: Password }),
  status: 204,
});
export const changePreferences = endpoint({
  method: 'PUT',
  path: '/api/v1/session/preferences',
  access: 'signed-in',
  tag,
  summary: 'Change the own name and language',
  body: z.object({ name: Name, locale: Locale }),
  response: Me,
});

export const Person = z.object({
  id: Id,
  name: z.string(),
  email: z.string(),
  locale: Locale,
  grants: z.array(Grant),
  retiredAt: Instant.nullable(),
  mustChangePassword: z.boolean(),
  lastSeenAt: Instant.nullable(),
  createdAt: Instant,
  version: Version,
});
export type Person = z.infer<typeof Person>;

export const PersonInput = z.object({
  name: Name,
  email: Email,
  locale: Locale.default('en'),
  grants: z.array(Grant).max(200),
});

export const listPeople = endpoint({
  method: 'GET',
  path: '/api/v1/people',
  access: 'people.read',
  tag,
  summary: 'List people',
  query: PageQuery.extend({ q: z.string().max(100).optional(), retired: z.stringbool().default(false) }),
  response: page(Person),
});
export const createPerson = endpoint({
  method: 'POST',
  path: '/api/v1/people',
  access: 'people.write',
  tag,
  summary: 'Add a person with a first password, to be changed at sign-in',

  status: 201,
  body: PersonInput.extend({ password: Password }),
  response: Person,
});
export const updatePerson = endpoint({
  method: 'PUT',
  path: '/api/v1/people/:id',
  access: 'people.write',
  tag,
  summary: 'Change a person and their roles',
  write: 'update',
  params: IdParams,
  body: PersonInput,
  response: Person,
});
export const resetPassword = endpoint({
  method: 'PUT',
  path: '/api/v1/people/:id/password',
  access: 'people.write',
  tag,
  summary: 'Set a new first password; ends all sessions of the person',
  write: 'update',
  params: IdParams,
  body: z.object({ password: Password }),
  response: Person,
});
export const retirePerson = endpoint({
  method: 'PUT',
  path: '/api/v1/people/:id/retired',
  access: 'people.write',
  tag,
  summary: 'Retire or bring back a person',
  write: 'update',
  params: IdParams,
  body: z.object({ retired: z.boolean() }),
  response: Person,
});

export const Token = z.object({
  id: Id,
  name: z.string(),
  grants: z.array(Grant),
  createdAt: Instant,
  expiresAt: Instant.nullable(),
  revokedAt: Instant.nullable(),
  lastUsedAt: Instant.nullable(),
  createdBy: z.string(),
});
export type Token = z.infer<typeof Token>;
export const listTokens = endpoint({
  method: 'GET',
  path: '/api/v1/tokens',
  access: 'tokens.write',
  tag,
  summary: 'List API tokens',
  query: PageQuery,
  response: page(Token),
});
export const createToken = endpoint({
  method: 'POST',
  path: '/api/v1/tokens',
  access: 'tokens.write',
  tag,
  summary: 'Make an API token; its secret is shown once',

  status: 201,
  body: z.object({ name: Name, grants: z.array(Grant).min(1).max(50), expiresAt: Instant.nullable().default(null) }),
  response: z.object({
    token: Token,
    secret: z.string().describe('send as `Authorization: Bearer …`; not stored, not shown again'),
  }),
});
export const revokeToken = endpoint({
  method: 'DELETE',
  path: '/api/v1/tokens/:id',
  access: 'tokens.write',
  tag,
  summary: 'Revoke an API token',
  params: IdParams,
  status: 204,
});

/** A person as colleagues see them: enough to hand something over. */
export const Colleague = z.object({ id: Id, name: z.string(), roles: z.array(Role) });
export type Colleague = z.infer<typeof Colleague>;
export const listColleagues = endpoint({
  method: 'GET',
  path: '/api/v1/plants/:id/colleagues',
  access: 'masterData.read',
  tag,
  summary: 'People with a role at a plant, by name',
  params: IdParams,
  query: z.object({ permission: z.enum(Object.keys(permissions) as [Permission, ...Permission[]]).optional() }),
  response: z.object({ items: z.array(Colleague) }),
});
