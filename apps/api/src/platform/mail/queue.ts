import { newId } from '#api/platform/ids.ts';
import type { Unit } from '#api/platform/unit.ts';

export interface Letter {
  /** What it tells whom; the same is queued once. */
  key: string;
  to: string;
  subject: string;
  /** Plain text, in the recipient's language. */
  body: string;
  /** The page of the dashboard that it is about, such as `/actions`; its address is written below the text. */
  link: string | null;
  locale: string;
  /** Why the person gets it, and so where it is switched off; default: the setting of their account. */
  reason?: 'account' | 'subscription';
  /** One file that goes with it. */
  file?: { name: string; bytes: Uint8Array<ArrayBuffer> };
}

/** Puts mail into the transaction of what it tells: it goes out if that happened, and only then. A job sends it. */
export async function queueMail({ tx, at }: Pick<Unit, 'tx' | 'at'>, letters: readonly Letter[]): Promise<void> {
  if (letters.length === 0) return;
  await tx.mail.createMany({
    data: letters.map(({ key, to, subject, body, link, locale, reason, file }) => ({
      id: newId(),
      key,
      recipient: to,
      subject: subject.replaceAll(/\s+/g, ' '),
      body,
      link,
      locale,
      ...(reason && { reason }),
      ...(file && { fileName: file.name, file: file.bytes }),
      queuedAt: at,
      nextTryAt: at,
    })),
    skipDuplicates: true,
  });
}
