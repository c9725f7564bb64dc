import { useTranslation } from 'react-i18next';
import classes from './escapes.module.css';

const samples = ['one', 'many'] as const;

export const FlowKey = () => {
  const { t } = useTranslation('escapes');
  return (
    <ul className={classes.key}>
      <li>
        <svg width="16" height="16" aria-hidden="true">
          <circle cx="8" cy="8" r="6" className={classes.here} />
        </svg>
        {t('flow.key.here')}
      </li>
      {samples.map((reach) => (
        <li key={reach}>
          <svg width="30" height="16" aria-hidden="true">
            <path d="M3 15C3 0 27 0 27 15" strokeWidth="5" className={classes.arc} data-reach={reach} />
          </svg>
          {t(`flow.key.${reach}`)}
        </li>
      ))}
    </ul>
  );
};
