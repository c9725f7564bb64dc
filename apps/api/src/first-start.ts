import type { Database } from '#db/client.ts';
import { demoSignIn } from '#seed/sign-in.ts';
import type { Config } from './config.ts';
import { newId } from './platform/ids.ts';
import { hashPassword, newSecret } from './platform/passwords.ts';

interface FirstStart {
  config: Config;
  db: Database;
  url: string;
  log: (line: string) => void;
}

/** Loads the demo or makes the first administrator when nobody exists. Returns the lines that tell how to sign in. */
export async function prepareFirstStart(start: FirstStart): Promise<string[]> {
  const isFirst = (await start.db.prisma.person.count()) === 0;
  const demo = start.config.seed === 'demo' && (await holdsDemo(start, isFirst)) ? demoSignIn : [];
  const needsAdministrator = isFirst && (demo.length === 0 || start.config.admin !== null);
  return needsAdministrator ? [...(await makeFirstAdministrator(start)), ...demo] : [...demo];
}

/** Whether the database holds the demo; it is loaded now if there is nothing at all yet. */
async function holdsDemo({ config, db, url, log }: FirstStart, isFirst: boolean): Promise<boolean> {
  const { demoLoadedAt } = await db.prisma.organisation.findFirstOrThrow();
  if (demoLoadedAt) return true;
  if (!isFirst || (await db.prisma.plant.count()) > 0) return false;
  const { loadDemoFor } = await import('./demo.ts');
  await loadDemoFor(config, url, log);
  return true;
}

async function makeFirstAdministrator({ config, db, log }: FirstStart): Promise<string[]> {
  const email = config.admin?.email ?? 'admin@example.test';
  const password = config.admin?.password ?? newSecret().slice(0, 16);
  const passwordHash = await hashPassword(password);
  await db.prisma.$transaction(async (tx) => {
    const id = newId();
    await tx.person.create({
      data: { id, name: 'Administrator', email, passwordHash, mustChangePassword: config.admin === null },
    });
    await tx.roleGrant.create({ data: { id: newId(), personId: id, role: 'administrator', plantId: null } });
    await tx.auditEntry.create({
      data: {
        id: newId(),
        at: new Date(),
        actor: 'system',
        action: 'created',
        entity: 'person',
        entityId: id,
        label: email,
        after: { email, role: 'administrator' },
      },
    });
  });
  log('First administrator made.');
  return config.admin
    ? [`Sign in as ${email} with the password from ADMIN_PASSWORD.`]
    : [`Sign in as ${email} with the password ${password} (shown once; you choose your own at sign-in).`];
}
