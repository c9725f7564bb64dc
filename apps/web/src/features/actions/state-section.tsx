import { Button, Group, Modal, Stack, Text, Textarea } from '@mantine/core';
import { useState } from 'react';
import { useTranslation } from 'react-i18next';
import type { ActionOf, ActionState } from '#contracts/actions.ts';
import { ProblemNote } from '#web/ui/problem.tsx';
import { useActionWrites } from './queries.ts';

type Step = Exclude<ActionState, 'verified'> | 'pass' | 'send_back';

/** What may come next, the likeliest first. */
const next: Readonly<Record<ActionState, readonly Exclude<ActionState, 'verified'>[]>> = {
  agreed: ['under_way', 'carried_out', 'held_up', 'given_up'],
  under_way: ['carried_out', 'held_up', 'given_up'],
  held_up: ['under_way', 'carried_out', 'given_up'],
  carried_out: ['under_way'],
  verified: ['under_way'],
  given_up: ['under_way'],
};
const withReason = (state: ActionState, step: Step): boolean =>
  step === 'held_up' || step === 'given_up' || !['agreed', 'under_way', 'held_up'].includes(state);

/** Where the action stands, why, and the ways on. */
export const StateSection = ({ action, mayWrite }: { action: ActionOf; mayWrite: boolean }) => {
  const { t } = useTranslation('actions');
  const { move, verify } = useActionWrites();
  const [asked, setAsked] = useState<Step>();
  const go = (step: Step, reason: string) => {
    const onSuccess = () => setAsked(undefined);
    if (step === 'pass' || step === 'send_back')
      verify.mutate({ action, body: { passed: step === 'pass', note: reason } }, { onSuccess });
    else move.mutate({ action, body: { state: step, reason: reason || null } }, { onSuccess });
  };
  const press = (step: Step) => {
    move.reset();
    verify.reset();
    return withReason(action.state, step) ? setAsked(step) : go(step, '');
  };
  const label = (step: Step) =>
    t(step === 'under_way' && withReason(action.state, step) ? 'step.reopen' : `step.${step}`);
  const error = move.error ?? verify.error;

  return (
    <>
      {action.stateReason && <Text fw={600}>{t('because', { reason: action.stateReason })}</Text>}
      {action.state === 'carried_out' && !action.mayVerify && <Text size="sm">{t('otherVerifies')}</Text>}
      {mayWrite && (
        <Group my="md" className="no-print">
          {action.mayVerify && (
            <>
              <Button onClick={() => press('pass')}>{t('step.pass')}</Button>
              <Button variant="default" onClick={() => press('send_back')}>
                {t('step.send_back')}
              </Button>
            </>
          )}
          {next[action.state].map((step, place) => (
            <Button
              key={step}
              variant={place === 0 && !action.mayVerify ? 'filled' : 'default'}
              loading={move.isPending && move.variables?.body?.state === step}
              onClick={() => press(step)}
            >
              {label(step)}
            </Button>
          ))}
        </Group>
      )}
      {error && !asked && <ProblemNote error={error} />}
      {asked && (
        <ReasonForm
          title={label(asked)}
          verification={asked === 'pass' || asked === 'send_back'}
          pending={move.isPending || verify.isPending}
          error={error}
          onDone={() => setAsked(undefined)}
          onReason={(reason) => go(asked, reason)}
        />
      )}
    </>
  );
};

interface FormProps {
  title: string;
  verification: boolean;
  pending: boolean;
  error: unknown;
  onDone: () => void;
  onReason: (reason: string) => void;
}

const ReasonForm = ({ title, verification, pending, error, onDone, onReason }: FormProps) => {
  const { t } = useTranslation('actions');
  const [reason, setReason] = useState('');
  const [missing, setMissing] = useState(false);
  return (
    <Modal opened onClose={onDone} title={title} closeButtonProps={{ 'aria-label': t('form.close') }}>
      <form
        noValidate
        onSubmit={(event) => {
          event.preventDefault();
          if (reason.trim() === '') setMissing(true);
          else onReason(reason.trim());
        }}
      >
        <Stack>
          <Textarea
            label={t(verification ? 'form.seen' : 'form.reason')}
            description={t(verification ? 'form.seenHelp' : 'form.reasonHelp')}
            required
            autosize
            minRows={3}
            maxLength={10_000}
            value={reason}
            onChange={(event) => setReason(event.currentTarget.value)}
            error={missing && reason.trim() === '' ? t('form.missing') : undefined}
            data-autofocus
          />
          {error ? <ProblemNote error={error} /> : null}
          <Group justify="flex-end">
            <Button type="submit" loading={pending}>
              {title}
            </Button>
          </Group>
        </Stack>
      </form>
    </Modal>
  );
};
