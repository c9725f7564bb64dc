import { Fieldset, SimpleGrid, TagsInput } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { useTranslation } from 'react-i18next';
import { RowSelect } from '#web/ui/row-select.tsx';
import { RowsSelect } from '#web/ui/rows-select.tsx';
import { CavityPicture } from '../cavity-picture.tsx';
import { housingQuery } from '../plant-data.ts';
import { type ReportFormApi, rowProps } from './field-props.ts';

/** Which part, which cavity, which tools. */
export const PartFields = ({ form }: { form: ReportFormApi }) => {
  const { t } = useTranslation('failures');
  const { housingId, plantId, toolIds, cavities } = form.values;
  const face = useQuery({ ...housingQuery(housingId ?? ''), enabled: housingId !== null });
  const setCavities = (names: string[]) => form.setFieldValue('cavities', names);

  return (
    <Fieldset legend={t('form.part')}>
      <SimpleGrid cols={{ base: 1, xs: 2, md: 3 }}>
        <RowSelect resource="housings" label={t('field.housing')} {...rowProps(form, 'housingId')} />
        <RowSelect resource="terminals" label={t('field.terminal')} {...rowProps(form, 'terminalId')} />
        <RowSelect resource="wires" label={t('field.wire')} {...rowProps(form, 'wireId')} />
        <RowsSelect
          resource="tools"
          label={t('field.tools')}
          plant={plantId ? [plantId] : []}
          value={toolIds}
          onChange={(ids) => form.setFieldValue('toolIds', ids)}
        />
        <TagsInput
          label={t('field.cavities')}
          description={t('form.cavitiesHelp')}
          value={cavities}
          onChange={setCavities}
          acceptValueOnBlur
          maxTags={200}
          error={form.errors.cavities}
        />
      </SimpleGrid>
      {housingId !== null && face.data && (
        <CavityPicture face={face.data} chosen={cavities} onChange={setCavities} label={t('cavity.pick')} />
      )}
    </Fieldset>
  );
};
