import { Menu } from '@mantine/core';
import { IconDots } from '@tabler/icons-react';
import { Link } from '@tanstack/react-router';
import { useTranslation } from 'react-i18next';
import { may, usePerson } from '#web/ui/person.ts';
import { pages } from './pages.ts';
import classes from './shell.module.css';

/** How many pages fit beside "More" on a phone. */
const atHand = 4;

export const ThumbIndex = () => {
  const { t } = useTranslation('app');
  const person = usePerson();
  const open = pages.filter((page) => may(person, page.permission));
  const further = open.slice(atHand);

  return (
    <nav className={classes.index} aria-label={t('index')}>
      <ul>
        {open.map((page, place) => (
          <li key={page.label} data-further={place >= atHand || undefined}>
            <Link to={page.to} className={classes.tab} activeOptions={{ exact: page.to === '/', includeSearch: false }}>
              <page.icon size={20} stroke={1.6} aria-hidden />
              <span>{t(`pages.${page.label}`)}</span>
            </Link>
          </li>
        ))}
        {further.length > 0 && (
          <li className={classes.more}>
            <Menu position="top-end" width={220}>
              <Menu.Target>
                <button type="button" className={classes.tab}>
                  <IconDots size={20} stroke={1.6} aria-hidden />
                  <span>{t('more')}</span>
                </button>
              </Menu.Target>
              <Menu.Dropdown>
                {further.map((page) => (
                  <Menu.Item
                    key={page.label}
                    component={Link}
                    to={page.to}
                    leftSection={<page.icon size={18} aria-hidden />}
                  >
                    {t(`pages.${page.label}`)}
                  </Menu.Item>
                ))}
              </Menu.Dropdown>
            </Menu>
          </li>
        )}
      </ul>
    </nav>
  );
};
