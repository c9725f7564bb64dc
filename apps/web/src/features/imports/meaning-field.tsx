import { Button, Group, Select, Text } from '@mantine/core';
import { useDisclosure } from '@mantine/hooks';
import { useTranslation } from 'react-i18next';
import type { Import, UnknownValue } from '#contracts/imports.ts';
import { useTerms } from '#web/ui/language.ts';
import { may, usePerson } from '#web/ui/person.ts';
import { RowSelect } from '#web/ui/row-select.tsx';
import { isRequired, typeOf } from './fields.ts';
import classes from './imports.module.css';
import { newForms, resources } from './new-forms.ts';
import { NewValue } from './new-value.tsx';
import type { Meaning } from './values-step.tsx';
import { wordOptions } from './words.ts';

interface Props {
  kind: Import['kind'];
  value: UnknownValue;
  meaning: Meaning | null;
  onChange: (meaning: Meaning | null) => void;
}

/** Something that exists, something new, or nothing. */
export const MeaningField = ({ kind, value, meaning, onChange }: Props) => {
  const { t } = useTranslation('imports');
  const terms = useTerms();
  const person = usePerson();
  const [making, { open, close }] = useDisclosure();
  const type = typeOf(kind, value.field);
  const given = { field: value.field, plantId: value.plantId, raw: value.raw };
  const label = t('standsForOf', { value: value.raw });
  const choose = (target: string | null) => onChange(target ? { ...given, as: 'existing', target } : null);
  const target = meaning?.as === 'existing' ? meaning.target : null;
  const reference = type?.type === 'reference' ? type.of : null;
  const mayMake = reference && may(person, newForms[reference].permission, value.plantId ?? undefined);
  if (meaning && meaning.as !== 'existing')
    return (
      <Group gap="xs">
        <Text size="sm">
          {meaning.as === 'blank' ? t('asBlank') : t('asNew', { code: String(meaning.input.code) })}
        </Text>
        <Button variant="subtle" size="compact-sm" onClick={() => onChange(null)}>
          {t('undo')}
        </Button>
      </Group>
    );
  return (
    <div className={classes.meaning}>
      {reference ? (
        <RowSelect
          resource={resources[reference]}
          label={label}
          plant={value.plantId}
          value={target}
          onChange={choose}
        />
      ) : (
        <Select
          label={label}
          data={type?.type === 'word' ? wordOptions(type.of, terms, [t('yes'), t('no')]) : []}
          value={target}
          onChange={choose}
          searchable
          clearable
        />
      )}
      {mayMake && (
        <Button variant="default" size="sm" onClick={open}>
          {t('makeNew')}
        </Button>
      )}
      {!isRequired(kind, value.field) && (
        <Button variant="subtle" size="sm" onClick={() => onChange({ ...given, as: 'blank' })}>
          {t('leaveBlank')}
        </Button>
      )}
      {making && reference && (
        <NewValue
          reference={reference}
          raw={value.raw}
          onClose={close}
          onMade={(input) => {
            onChange({ ...given, as: 'new', input });
            close();
          }}
        />
      )}
    </div>
  );
};
