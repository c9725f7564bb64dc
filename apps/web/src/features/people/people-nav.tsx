import { Link } from '@tanstack/react-router';
import { useTranslation } from 'react-i18next';
import classes from './people.module.css';

/** People and the tokens of machines: two pages of one kind. */
export const PeopleNav = () => {
  const { t } = useTranslation('people');
  return (
    <nav className={classes.nav} aria-label={t('pages')}>
      <Link to="/people" activeOptions={{ includeSearch: false }}>
        {t('title')}
      </Link>
      <Link to="/tokens">{t('tokens.title')}</Link>
    </nav>
  );
};
