import { IconAlertTriangle, IconCheck, IconClock } from '@tabler/icons-react';
import { useTranslation } from 'react-i18next';
import { useFormat } from '#web/ui/language.ts';
import classes from './master-data.module.css';
import { type Counted, cyclesLeft, type ServiceState, serviceState } from './service-state.ts';

const icons: Record<Exclude<ServiceState, 'none'>, typeof IconCheck> = {
  good: IconCheck,
  soon: IconClock,
  overdue: IconAlertTriangle,
};

/** "due in 12,000 cycles" or "overdue by 300 cycles", never by colour alone. */
export const ServiceText = ({ tool }: { tool: Counted }) => {
  const { t } = useTranslation('master-data');
  const format = useFormat();
  const state = serviceState(tool);
  if (state === 'none') return t('service.none');
  const Icon = icons[state];
  const left = cyclesLeft(tool) ?? 0;
  const cycles = format.count(Math.abs(left));
  return (
    <span className={classes.service} data-state={state}>
      <Icon size={16} aria-hidden />
      {left > 0 ? t('service.dueIn', { cycles }) : t('service.overdue', { cycles })}
    </span>
  );
};
