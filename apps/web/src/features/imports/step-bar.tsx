import { Link } from '@tanstack/react-router';
import { useTranslation } from 'react-i18next';
import type { Import } from '#contracts/imports.ts';
import classes from './imports.module.css';
import { importRoute } from './routes.ts';
import { openSteps, type Step, steps } from './steps.ts';

/** Where the person is on the way, and back to what is behind. */
export const StepBar = ({ job, step: current }: { job: Import; step: Step }) => {
  const { t } = useTranslation('imports');
  const open = openSteps(job);
  return (
    <nav aria-label={t('steps')} className={classes.steps}>
      <ol>
        {steps.map((step) => (
          <li key={step} data-current={step === current || undefined}>
            {open.includes(step) && step !== current ? (
              <Link to={importRoute.to} params={{ id: job.id }} search={{ step }}>
                {t(`step.${step}`)}
              </Link>
            ) : (
              <span aria-current={step === current ? 'step' : undefined}>{t(`step.${step}`)}</span>
            )}
          </li>
        ))}
      </ol>
    </nav>
  );
};
