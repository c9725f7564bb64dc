import { ActionIcon, Button, Checkbox, Group, Textarea } from '@mantine/core';
import { IconCornerDownRight, IconTrash } from '@tabler/icons-react';
import { useTranslation } from 'react-i18next';
import type { TreeName, WhyNode, WhyTree } from '#contracts/case-parts.ts';
import type { Case } from '#contracts/cases.ts';
import classes from './cases.module.css';
import { newRowId } from './new-row-id.ts';
import { ProofEditor } from './proof-editor.tsx';
import { branchOf, ordered } from './tree.ts';

interface Props {
  of: Case;
  name: TreeName;
  tree: WhyTree;
  onChange: (tree: WhyTree) => void;
  open: boolean;
}

/** A branching 5-Why: every line is explained by those indented below it; each end names its proof. */
export const TreeEditor = ({ of, name, tree, onChange, open }: Props) => {
  const { t } = useTranslation('cases');
  const rows = ordered(tree);
  const parents = new Set(tree.nodes.map(({ parent }) => parent));
  const change = (id: string, more: Partial<WhyNode>) =>
    onChange({ nodes: tree.nodes.map((node) => (node.id === id ? { ...node, ...more } : node)) });
  const add = (parent: string | null) =>
    onChange({ nodes: [...tree.nodes, { id: newRowId(), parent, text: '', proof: [], ruledOut: false }] });
  const drop = (id: string) => {
    const gone = branchOf(tree, id);
    onChange({ nodes: tree.nodes.filter((node) => !gone.has(node.id)) });
  };
  if (rows.length === 0)
    return open ? (
      <div>
        <Button variant="default" onClick={() => add(null)}>
          {t('startTree')}
        </Button>
      </div>
    ) : (
      <p>{t('emptyTree')}</p>
    );
  return (
    <ol className={classes.tree} aria-label={t(`tree.${name}`)}>
      {rows.map(({ node, depth }, place) => {
        const label = depth === 0 ? t('why0') : t('whyDepth', { depth });
        return (
          <li
            key={node.id}
            style={{ '--depth': Math.min(depth, 6) } as React.CSSProperties}
            data-out={node.ruledOut || undefined}
          >
            <Textarea
              label={label}
              value={node.text}
              required
              autosize
              onChange={(event) => change(node.id, { text: event.target.value })}
            />
            {!parents.has(node.id) && (
              <ProofEditor
                of={of}
                proof={node.proof}
                onChange={(proof) => change(node.id, { proof })}
                number={place + 1}
              />
            )}
            {open && (
              <Group gap="xs" mt={4} className="no-print">
                <Button
                  size="compact-sm"
                  variant="default"
                  leftSection={<IconCornerDownRight size={14} aria-hidden />}
                  aria-label={t('askWhyOf', { number: place + 1 })}
                  onClick={() => add(node.id)}
                >
                  {t('askWhy')}
                </Button>
                {depth > 0 && !parents.has(node.id) && (
                  <Checkbox
                    size="sm"
                    label={t('ruledOut')}
                    checked={node.ruledOut}
                    onChange={(event) => change(node.id, { ruledOut: event.target.checked })}
                  />
                )}
                <ActionIcon
                  variant="subtle"
                  size="lg"
                  aria-label={t('dropNode', { number: place + 1 })}
                  onClick={() => drop(node.id)}
                >
                  <IconTrash size={16} aria-hidden />
                </ActionIcon>
              </Group>
            )}
          </li>
        );
      })}
    </ol>
  );
};
