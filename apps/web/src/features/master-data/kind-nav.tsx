import { Select } from '@mantine/core';
import { Link, useNavigate } from '@tanstack/react-router';
import { useTranslation } from 'react-i18next';
import { type KindName, kindGroups } from './kind-names.ts';
import classes from './master-data.module.css';

const groups = Object.entries(kindGroups) as [keyof typeof kindGroups, readonly KindName[]][];

/** The kinds as a list beside the page; on a narrow window one field above it. */
export const KindNav = ({ current }: { current: KindName }) => {
  const { t } = useTranslation('master-data');
  const navigate = useNavigate();
  return (
    <nav className={classes.nav} aria-label={t('kinds')}>
      <div className={classes.list}>
        {groups.map(([group, kinds]) => (
          <section key={group}>
            <h2>{t(`group.${group}`)}</h2>
            <ul>
              {kinds.map((kind) => (
                <li key={kind}>
                  <Link to="/master-data/$kind" params={{ kind }} activeOptions={{ includeSearch: false }}>
                    {t(`kind.${kind}.title`)}
                  </Link>
                </li>
              ))}
            </ul>
          </section>
        ))}
      </div>
      <Select
        className={classes.pick}
        label={t('kinds')}
        data={groups.map(([group, kinds]) => ({
          group: t(`group.${group}`),
          items: kinds.map((kind) => ({ value: kind, label: t(`kind.${kind}.title`) })),
        }))}
        value={current}
        allowDeselect={false}
        onChange={(kind) => kind && void navigate({ to: '/master-data/$kind', params: { kind } })}
      />
    </nav>
  );
};
