import { Menu } from '@mantine/core';
import { IconDots } from '@tabler/icons-react';
import { Link } from '@tanstack/react-router';
import { useTranslation } from 'react-i18next';
import { may, usePerson } from '#web/ui/person.ts';
import { atHand, type PageEntry, pages, sections } from './pages.ts';
import classes from './shell.module.css';

const bySection = (open: readonly PageEntry[]) =>
  sections
    .map((section) => ({ section, entries: open.filter((page) => page.section === section) }))
    .filter(({ entries }) => entries.length > 0);

export const ThumbIndex = () => {
  const { t } = useTranslation('app');
  const person = usePerson();
  const open = pages.filter((page) => may(person, page.permission));
  const further = open.filter((page) => !atHand.includes(page.label));

  return (
    <nav className={classes.index} aria-label={t('index')}>
      <div className={classes.sections}>
        {bySection(open).map(({ section, entries }) => (
          <ul key={section} aria-label={t(`sections.${section}`)} data-heading={t(`sections.${section}`)}>
            {entries.map((page) => (
              <li key={page.label} data-further={further.includes(page) || undefined}>
                <Tab page={page} />
              </li>
            ))}
          </ul>
        ))}
        {further.length > 0 && <More pages={further} />}
      </div>
    </nav>
  );
};

const Tab = ({ page }: { page: PageEntry }) => {
  const { t } = useTranslation('app');
  return (
    <Link to={page.to} className={classes.tab} activeOptions={{ exact: page.to === '/', includeSearch: false }}>
      <page.icon size={20} stroke={1.6} aria-hidden />
      <span>{t(`pages.${page.label}`)}</span>
    </Link>
  );
};

const More = ({ pages }: { pages: readonly PageEntry[] }) => {
  const { t } = useTranslation('app');
  return (
    <div className={classes.more}>
      <Menu position="top-end" width={240} styles={{ dropdown: { maxHeight: '80dvh', overflowY: 'auto' } }}>
        <Menu.Target>
          <button type="button" className={classes.tab}>
            <IconDots size={20} stroke={1.6} aria-hidden />
            <span>{t('more')}</span>
          </button>
        </Menu.Target>
        <Menu.Dropdown>
          {bySection(pages).map(({ section, entries }) => [
            <Menu.Label key={section}>{t(`sections.${section}`)}</Menu.Label>,
            ...entries.map((page) => (
              <Menu.Item
                key={page.label}
                component={Link}
                to={page.to}
                leftSection={<page.icon size={18} aria-hidden />}
              >
                {t(`pages.${page.label}`)}
              </Menu.Item>
            )),
          ])}
        </Menu.Dropdown>
      </Menu>
    </div>
  );
};
