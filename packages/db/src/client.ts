import { PrismaPg } from '@prisma/adapter-pg';
import pg from 'pg';
import { type Prisma, PrismaClient } from './generated/client.ts';
import { statementNames } from './statement-names.ts';
import { types } from './types.ts';

export type Tx = Prisma.TransactionClient;

export interface Database {
  prisma: PrismaClient;
  pool: pg.Pool;
  close(): Promise<void>;
}

export interface DatabaseOptions {
  /** Connections in all; half for Prisma, half for SQL of our own, so that neither can starve the other. */
  poolSize?: number;
  /** Longest that one statement may run, in milliseconds. */
  statementTimeout?: number;
  /** Told of connections that broke while idle; the pools replace them by themselves. */
  onError?: (error: Error) => void;
}

export async function openDatabase(url: string, options: DatabaseOptions = {}): Promise<Database> {
  const { poolSize = 20, statementTimeout = 60_000, onError = () => {} } = options;
  const settings: pg.PoolConfig = {
    connectionString: url,
    max: Math.max(1, Math.ceil(poolSize / 2)),
    connectionTimeoutMillis: 15_000,
    idleTimeoutMillis: 60_000,
    application_name: 'escape-ledger',
    options: `-c TimeZone=UTC -c jit=off -c statement_timeout=${statementTimeout} -c idle_in_transaction_session_timeout=120000`,
  };
  const pool = new pg.Pool({ ...settings, types });
  const prismaPool = new pg.Pool(settings);
  pool.on('error', onError);
  prismaPool.on('error', onError);
  const adapter = new PrismaPg(prismaPool, { statementNameGenerator: statementNames() });
  const prisma = new PrismaClient({ adapter, transactionOptions: { maxWait: 15_000, timeout: 60_000 } });
  return {
    prisma,
    pool,
    async close() {
      await prisma.$disconnect();
      await Promise.all([pool.end(), prismaPool.end()]);
    },
  };
}
