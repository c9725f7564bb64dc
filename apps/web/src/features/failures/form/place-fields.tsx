import { Fieldset, Select, SimpleGrid, TextInput } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { useTranslation } from 'react-i18next';
import { type Stage, sources, stages } from '#contracts/taxonomy.ts';
import { useTerms } from '#web/ui/language.ts';
import { rowText, usePlants } from '#web/ui/lookup.ts';
import { may, usePerson } from '#web/ui/person.ts';
import { RowSelect } from '#web/ui/row-select.tsx';
import { stagesQuery } from '../plant-data.ts';
import { type ReportFormApi, rowProps, textProps } from './field-props.ts';

/** Where and when it was found. */
export const PlaceFields = ({ form, plantFixed }: { form: ReportFormApi; plantFixed: boolean }) => {
  const { t } = useTranslation('failures');
  const terms = useTerms();
  const person = usePerson();
  const { plantId, stageId, found } = form.values;
  const plants = usePlants().filter(({ id }) => may(person, 'failures.write', id));
  const own = useQuery({ ...stagesQuery(plantId), enabled: plantId !== '' }).data ?? [];
  const setPlant = (id: string | null) =>
    form.setValues({ ...form.values, plantId: id ?? '', lineId: null, stageId: null, toolIds: [] });
  const setStage = (value: string | null) => {
    const stage = own.find(({ id }) => id === value);
    form.setValues({ ...form.values, stageId: stage?.id ?? null, found: stage?.common ?? (value as Stage) });
  };

  return (
    <Fieldset legend={t('form.place')}>
      <SimpleGrid cols={{ base: 1, xs: 2, md: 3 }}>
        <Select
          label={t('field.plant')}
          data={plants.map((plant) => ({ value: plant.id, label: rowText(plant) }))}
          value={plantId || null}
          onChange={setPlant}
          disabled={plantFixed}
          allowDeselect={false}
          required
          error={form.errors.plantId}
        />
        <RowSelect resource="lines" label={t('field.line')} plant={plantId} {...rowProps(form, 'lineId')} />
        <Select
          label={t('field.found')}
          data={
            own.length > 0
              ? own.map(({ id, name }) => ({ value: id, label: name }))
              : stages.map((stage) => ({ value: stage, label: terms.stage[stage] }))
          }
          value={own.length > 0 ? (stageId ?? own.find(({ common }) => common === found)?.id ?? null) : found}
          onChange={setStage}
          allowDeselect={false}
          required
          error={form.errors.stageId ?? form.errors.found}
        />
        <TextInput label={t('field.station')} maxLength={80} {...textProps(form, 'station')} />
        <TextInput label={t('field.shift')} maxLength={80} {...textProps(form, 'shift')} />
        <Select
          label={t('field.source')}
          data={sources.map((source) => ({ value: source, label: terms.source[source] }))}
          allowDeselect={false}
          required
          {...form.getInputProps('source')}
        />
        <TextInput type="date" label={t('field.foundOn')} required {...textProps(form, 'foundOn')} />
        <TextInput type="date" label={t('field.builtOn')} {...textProps(form, 'builtOn')} />
      </SimpleGrid>
    </Fieldset>
  );
};
