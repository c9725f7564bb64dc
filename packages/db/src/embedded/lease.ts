import type pg from 'pg';
import { messageOf } from '../start-error.ts';

/** Held shared by everyone who uses the server; whoever gets it alone is the last one out. Freed by the system when a user dies. */
const inUse = 470_001;

export interface Server {
  client: pg.Client;
  port: number;
}

export interface Lease extends Server {
  /** Gives the server up; true for its last user, who is to stop it. */
  release(): Promise<boolean>;
}

/**
 * Marks the server as in use for as long as this process lives. When the server dies in the meantime it is brought back,
 * so that the application's pools find it again.
 */
export async function leaseServer(reach: () => Promise<Server>, log: (line: string) => void): Promise<Lease> {
  let released = false;
  const first = await join(reach);
  let current = Promise.resolve<Server | undefined>(first);

  const watch = ({ client }: Server) => {
    client.once('end', () => {
      if (released) return;
      log('The database stopped unexpectedly; bringing it back');
      current = join(reach).then(
        (server) => {
          watch(server);
          const moved = server.port !== first.port;
          log(moved ? 'The database is back on another port; restart Escape Ledger' : 'The database is back');
          return server;
        },
        (error) => {
          log(messageOf(error));
          return undefined;
        },
      );
    });
  };
  watch(first);

  return {
    ...first,
    async release() {
      released = true;
      const server = await current;
      if (!server) return false;
      const last = await isAlone(server.client);
      await server.client.end().catch(() => {});
      return last;
    },
  };
}

/** A server that is being stopped by its last user ends our connection: reach for it anew. */
async function join(reach: () => Promise<Server>): Promise<Server> {
  for (;;) {
    const server = await reach();
    try {
      await server.client.query('select pg_advisory_lock_shared($1)', [inUse]);
      return server;
    } catch {
      await server.client.end().catch(() => {});
    }
  }
}

async function isAlone(client: pg.Client): Promise<boolean> {
  try {
    await client.query('select pg_advisory_unlock_shared($1)', [inUse]);
    const { rows } = await client.query<{ alone: boolean }>('select pg_try_advisory_lock($1) as alone', [inUse]);
    return rows[0]?.alone === true;
  } catch {
    return false;
  }
}
