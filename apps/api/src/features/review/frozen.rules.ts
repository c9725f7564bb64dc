import { createHash } from 'node:crypto';
import { ReviewContent } from '#contracts/review-content.ts';

export interface Kept {
  content: string;
  hash: string;
}

const hashOf = (content: string) => createHash('sha256').update(content).digest('hex');

/** The content as it is kept, and its SHA-256. */
export function keep(content: ReviewContent): Kept {
  const text = JSON.stringify(ReviewContent.parse(content));
  return { content: text, hash: hashOf(text) };
}

/** Reads what is kept by the contract; `intact` is false where it is not what was hashed. */
export const readKept = ({ content, hash }: Kept): { content: ReviewContent; intact: boolean } => ({
  content: ReviewContent.parse(JSON.parse(content)),
  intact: hashOf(content) === hash,
});
