import { Menu } from '@mantine/core';
import { IconCoins } from '@tabler/icons-react';
import { useTranslation } from 'react-i18next';
import { usePlants } from '#web/ui/lookup.ts';
import classes from './filter-bar.module.css';
import { useFilter } from './use-filter.ts';

/** The currency all money of the page is shown in: those of the plants, and the one the API chose. */
export const CurrencyPicker = ({ shown }: { shown: string }) => {
  const { t } = useTranslation('ui');
  const [, change] = useFilter();
  const offered = [...new Set([shown, ...usePlants().map(({ currency }) => currency)])].sort();
  return (
    <Menu position="bottom-start" shadow="md">
      <Menu.Target>
        <button type="button" className={classes.word}>
          <IconCoins size={18} aria-hidden />
          <span className="visually-hidden">{t('filter.currency')}: </span>
          {shown}
        </button>
      </Menu.Target>
      <Menu.Dropdown>
        {offered.map((currency) => (
          <Menu.Item key={currency} onClick={() => change({ currency })}>
            {currency}
          </Menu.Item>
        ))}
      </Menu.Dropdown>
    </Menu>
  );
};
