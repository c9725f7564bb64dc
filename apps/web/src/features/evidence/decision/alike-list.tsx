import { Checkbox, Stack } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { useTranslation } from 'react-i18next';
import { useFormat } from '#web/ui/language.ts';
import { alikeQuery } from '../queries.ts';

interface Props {
  reportId: string;
  chosen: string[];
  onChange: (ids: string[]) => void;
}

/** Unsorted reports that share tool, lots and findings: the same decision may hold for them. */
export const AlikeList = ({ reportId, chosen, onChange }: Props) => {
  const { t } = useTranslation('evidence');
  const format = useFormat();
  const reports = useQuery(alikeQuery(reportId)).data ?? [];
  if (reports.length === 0) return null;
  return (
    <fieldset style={{ border: 0, margin: 0, padding: 0 }}>
      <legend>{t('batch.title', { count: reports.length })}</legend>
      <Stack gap="xs" mt="xs" mah="16rem" style={{ overflowY: 'auto' }}>
        <Checkbox
          size="md"
          label={t('batch.all')}
          checked={chosen.length === reports.length}
          indeterminate={chosen.length > 0 && chosen.length < reports.length}
          onChange={(event) => onChange(event.currentTarget.checked ? reports.map(({ id }) => id) : [])}
        />
        {reports.map(({ id, number, foundOn, terminals }) => (
          <Checkbox
            key={id}
            size="md"
            checked={chosen.includes(id)}
            onChange={(event) =>
              onChange(event.currentTarget.checked ? [...chosen, id] : chosen.filter((it) => it !== id))
            }
            label={t('batch.row', { number, day: format.day(foundOn), count: terminals })}
          />
        ))}
      </Stack>
    </fieldset>
  );
};
