import { useTranslation } from 'react-i18next';
import type { Grant } from '#contracts/people.ts';
import { useTerms } from '#web/ui/language.ts';
import { usePlants } from '#web/ui/lookup.ts';
import classes from './people.module.css';

/** Roles with the plants they hold for. */
export const GrantsText = ({ grants }: { grants: readonly Grant[] }) => {
  const { t } = useTranslation('people');
  const terms = useTerms();
  const names = new Map(usePlants().map(({ id, name }) => [id, name]));
  if (grants.length === 0) return <span className={classes.quiet}>{t('noRole')}</span>;
  return (
    <ul className={classes.roles}>
      {grants.map(({ role, plantId }) => (
        <li key={`${role} ${plantId}`}>
          {t('roleAt', {
            role: terms.role[role],
            plant: plantId === null ? t('everyPlant') : (names.get(plantId) ?? t('otherPlant')),
          })}
        </li>
      ))}
    </ul>
  );
};
