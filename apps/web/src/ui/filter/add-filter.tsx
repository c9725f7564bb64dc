import { Button, Menu, Popover, ScrollArea } from '@mantine/core';
import { IconPlus } from '@tabler/icons-react';
import { useState } from 'react';
import { useTranslation } from 'react-i18next';
import { FieldEditor } from './field-editor.tsx';
import { type FieldName, fieldNames, fields } from './fields.ts';
import { useFilter } from './use-filter.ts';

export const AddFilter = () => {
  const { t } = useTranslation('ui');
  const [filter] = useFilter();
  const [editing, setEditing] = useState<FieldName>();
  const open = fieldNames.filter((name) => filter[name] === undefined && fields[name].kind !== 'fixed');

  return (
    <Popover
      opened={editing !== undefined}
      onChange={(opened) => !opened && setEditing(undefined)}
      position="bottom-start"
      trapFocus
      withRoles={false}
      withArrow
      shadow="md"
    >
      <Popover.Target>
        <span className="no-print">
          <Menu position="bottom-start" shadow="md">
            <Menu.Target>
              <Button variant="subtle" size="compact-md" leftSection={<IconPlus size={16} aria-hidden />}>
                {t('filter.add')}
              </Button>
            </Menu.Target>
            <Menu.Dropdown>
              <ScrollArea.Autosize mah="20rem">
                {open.map((name) => (
                  <Menu.Item key={name} onClick={() => setEditing(name)}>
                    {t(`filter.field.${name}`)}
                  </Menu.Item>
                ))}
              </ScrollArea.Autosize>
            </Menu.Dropdown>
          </Menu>
        </span>
      </Popover.Target>
      <Popover.Dropdown>
        {editing && <FieldEditor name={editing} onDone={() => setEditing(undefined)} />}
      </Popover.Dropdown>
    </Popover>
  );
};
