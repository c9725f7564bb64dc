import { Popover } from '@mantine/core';
import { IconX } from '@tabler/icons-react';
import { useState } from 'react';
import { useTranslation } from 'react-i18next';
import { FieldEditor } from './field-editor.tsx';
import { type FieldName, fields } from './fields.ts';
import classes from './filter-bar.module.css';
import { useFilter } from './use-filter.ts';
import { useValueText } from './value-text.ts';

/** One part of the filter in words; press to change it, or take it out. */
export const Chip = ({ name }: { name: FieldName }) => {
  const { t } = useTranslation('ui');
  const [, change] = useFilter();
  const [open, setOpen] = useState(false);
  const text = useValueText()(name);
  const label = t(`filter.field.${name}`);

  return (
    <span className={classes.chip}>
      <Popover opened={open} onChange={setOpen} position="bottom-start" trapFocus withArrow shadow="md">
        <Popover.Target>
          <button
            type="button"
            className={classes.text}
            disabled={fields[name].kind === 'fixed'}
            onClick={() => setOpen(!open)}
          >
            {label}: <strong>{text}</strong>
          </button>
        </Popover.Target>
        <Popover.Dropdown>
          <FieldEditor name={name} onDone={() => setOpen(false)} />
        </Popover.Dropdown>
      </Popover>
      <button
        type="button"
        className={classes.remove}
        aria-label={t('filter.remove', { label })}
        onClick={() => change({ [name]: undefined })}
      >
        <IconX size={16} aria-hidden />
      </button>
    </span>
  );
};
