import { Button, Checkbox, Popover } from '@mantine/core';
import { IconBuildingFactory2 } from '@tabler/icons-react';
import { useState } from 'react';
import { useTranslation } from 'react-i18next';
import { useFormat } from '#web/ui/language.ts';
import { usePlants } from '#web/ui/lookup.ts';
import classes from './filter-bar.module.css';
import { useFilter } from './use-filter.ts';

export const PlantPicker = () => {
  const { t } = useTranslation('ui');
  const format = useFormat();
  const [{ plant = [] }, change] = useFilter();
  const [open, setOpen] = useState(false);
  const plants = usePlants();
  const chosen = plants.filter(({ id }) => plant.includes(id));
  const set = (ids: string[]) => change({ plant: ids.length > 0 ? ids : undefined });
  const words = chosen.length === 0 ? t('filter.allPlants') : format.list(chosen.map(({ name }) => name));

  return (
    <Popover opened={open} onChange={setOpen} position="bottom-start" trapFocus withArrow shadow="md">
      <Popover.Target>
        <button type="button" className={classes.word} onClick={() => setOpen(!open)}>
          <IconBuildingFactory2 size={18} aria-hidden />
          <span className="visually-hidden">{t('filter.plants')}: </span>
          {words}
        </button>
      </Popover.Target>
      <Popover.Dropdown>
        <Checkbox.Group value={plant} onChange={set} label={t('filter.plants')}>
          <div className={classes.options}>
            {plants.map(({ id, code, name }) => (
              <Checkbox key={id} value={id} label={`${name} (${code})`} />
            ))}
          </div>
        </Checkbox.Group>
        <Button variant="subtle" size="compact-sm" mt="xs" onClick={() => set([])} disabled={plant.length === 0}>
          {t('filter.allPlants')}
        </Button>
      </Popover.Dropdown>
    </Popover>
  );
};
