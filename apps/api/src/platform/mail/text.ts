import { fill, mailWords } from '#contracts/notice-words.ts';

interface Parts {
  body: string;
  link: string | null;
  locale: string;
  reason: 'account' | 'subscription';
}

/** The whole text of a mail: what it tells, where to look, and why it came. */
export function letterText({ body, link, locale, reason }: Parts, publicUrl: string | null): string {
  const words = mailWords(locale);
  const place = link && publicUrl ? [fill(words.open, { url: `${publicUrl}${link}` }, locale)] : [];
  return [body, ...place, `-- \n${words.why[reason]}`].join('\n\n');
}
