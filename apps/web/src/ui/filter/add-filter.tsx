import { Button, Popover } from '@mantine/core';
import { IconPlus } from '@tabler/icons-react';
import { useState } from 'react';
import { useTranslation } from 'react-i18next';
import { FieldEditor } from './field-editor.tsx';
import { type FieldName, fieldNames, fields } from './fields.ts';
import classes from './filter-bar.module.css';
import { useFilter } from './use-filter.ts';

/** First which part, then its value, in the same place. */
export const AddFilter = () => {
  const { t } = useTranslation('ui');
  const [filter] = useFilter();
  const [open, setOpen] = useState(false);
  const [editing, setEditing] = useState<FieldName>();
  const offered = fieldNames.filter((name) => filter[name] === undefined && fields[name].kind !== 'fixed');
  const toggle = (opened: boolean) => {
    setOpen(opened);
    setEditing(undefined);
  };

  return (
    <Popover opened={open} onChange={toggle} position="bottom-start" trapFocus withArrow shadow="md">
      <Popover.Target>
        <Button
          variant="subtle"
          size="compact-md"
          className="no-print"
          leftSection={<IconPlus size={16} aria-hidden />}
          onClick={() => toggle(!open)}
        >
          {t('filter.add')}
        </Button>
      </Popover.Target>
      <Popover.Dropdown aria-label={t('filter.add')}>
        {editing ? (
          <FieldEditor key={editing} name={editing} onDone={() => toggle(false)} />
        ) : (
          <ul className={classes.fields}>
            {offered.map((name) => (
              <li key={name}>
                <button type="button" onClick={() => setEditing(name)}>
                  {t(`filter.field.${name}`)}
                </button>
              </li>
            ))}
          </ul>
        )}
      </Popover.Dropdown>
    </Popover>
  );
};
