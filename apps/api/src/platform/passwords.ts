import { argon2, createHash, randomBytes, timingSafeEqual } from 'node:crypto';
import { promisify } from 'node:util';

const derive = promisify(argon2);
/** Argon2id with 19 MiB, 2 passes, 1 lane (OWASP Password Storage Cheat Sheet, value from memory). */
const cost = { memory: 19_456, passes: 2, parallelism: 1, tagLength: 32 };

export async function hashPassword(password: string): Promise<string> {
  const nonce = randomBytes(16);
  const tag = await derive('argon2id', { ...cost, message: password.normalize('NFKC'), nonce });
  return `argon2id$${cost.memory}$${cost.passes}$${nonce.toString('base64url')}$${tag.toString('base64url')}`;
}

export async function passwordMatches(password: string, hash: string): Promise<boolean> {
  const [method, memory, passes, nonce = '', tag = ''] = hash.split('$');
  if (method !== 'argon2id') return false;
  const expected = Buffer.from(tag, 'base64url');
  const actual = await derive('argon2id', {
    ...cost,
    memory: Number(memory),
    passes: Number(passes),
    tagLength: expected.length,
    message: password.normalize('NFKC'),
    nonce: Buffer.from(nonce, 'base64url'),
  });
  return timingSafeEqual(actual, expected);
}

/** A secret for a session or a token, 256 random bits; only its hash is stored. */
export const newSecret = (): string => randomBytes(32).toString('base64url');
export const hashSecret = (secret: string): string => createHash('sha256').update(secret).digest('base64url');
