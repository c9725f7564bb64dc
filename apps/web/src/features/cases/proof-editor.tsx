import { ActionIcon, Button, Group, Select, TextInput } from '@mantine/core';
import { IconX } from '@tabler/icons-react';
import { useState } from 'react';
import { useTranslation } from 'react-i18next';
import type { ProofLink } from '#contracts/case-parts.ts';
import type { Case } from '#contracts/cases.ts';
import classes from './cases.module.css';
import { useProofNames, useProofOptions } from './use-proof.ts';

interface Props {
  of: Case;
  proof: readonly ProofLink[];
  onChange: (proof: ProofLink[]) => void;
  /** of the node in its tree */
  number: number;
}
const keyOf = (link: ProofLink) => JSON.stringify(link);

/** What an end of a tree rests on: reports, findings, photos and files of the case, or a test in words. */
export const ProofEditor = ({ of, proof, onChange, number }: Props) => {
  const { t } = useTranslation('cases');
  const [tested, setTested] = useState('');
  const named = useProofNames(of);
  const options = useProofOptions(of).filter(({ value }) => !proof.some((link) => keyOf(link) === value));
  return (
    <div className={classes.proof}>
      <ul aria-label={t('proofOf', { number })}>
        {proof.map((link) => (
          <li key={keyOf(link)}>
            {named(link)}
            <ActionIcon
              variant="subtle"
              size="md"
              className="no-print"
              aria-label={t('dropProof', { proof: named(link) })}
              onClick={() => onChange(proof.filter((it) => it !== link))}
            >
              <IconX size={14} aria-hidden />
            </ActionIcon>
          </li>
        ))}
      </ul>
      <Group gap="xs" align="end" className="no-print">
        <Select
          label={t('addProof')}
          data={options}
          value={null}
          searchable
          onChange={(value) => value && onChange([...proof, JSON.parse(value)])}
        />
        <TextInput label={t('test')} value={tested} onChange={(event) => setTested(event.target.value)} />
        <Button
          variant="default"
          disabled={tested.trim().length < 3}
          onClick={() => {
            onChange([...proof, { kind: 'test', text: tested.trim() }]);
            setTested('');
          }}
        >
          {t('addTest')}
        </Button>
      </Group>
    </div>
  );
};
