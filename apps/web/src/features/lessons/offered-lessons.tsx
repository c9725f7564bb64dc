import { useDebouncedValue } from '@mantine/hooks';
import { useQuery } from '@tanstack/react-query';
import { useTranslation } from 'react-i18next';
import { useMay } from '#web/ui/person.ts';
import classes from './lessons.module.css';
import { offeredQuery } from './queries.ts';

interface Props {
  housingId?: string | null;
  terminalId?: string | null;
  cause?: string | null;
  effect?: string | null;
  text?: string | null;
}

/** Lessons that fit what is being written; nothing at all where none fits. */
export const OfferedLessons = ({ housingId, terminalId, cause, effect, text }: Props) => {
  const { t } = useTranslation('lessons');
  const may = useMay('cases.read');
  const [words] = useDebouncedValue((text ?? '').slice(0, 2000), 600);
  const query = {
    ...(housingId && { housing: housingId }),
    ...(terminalId && { terminal: terminalId }),
    ...(cause && { cause: cause as never }),
    ...(effect && { effect: effect as never }),
    ...(words.trim() && { text: words.trim() }),
  };
  const offered = useQuery({ ...offeredQuery(query), enabled: may && Object.keys(query).length > 0 }).data ?? [];
  if (offered.length === 0) return null;
  return (
    <aside className={classes.offered} aria-label={t('offered')}>
      <strong>{t('offered')}</strong>
      {offered.map(({ id, title, check, like }) => (
        <details key={id}>
          <summary>
            {title} <span className={classes.small}>({like.map((it) => t(`like.${it}`)).join(', ')})</span>
          </summary>
          <p>{check}</p>
        </details>
      ))}
    </aside>
  );
};
