import type { WhyNode, WhyTree } from '#contracts/case-parts.ts';

/** The nodes as they are read: each before what explains it, with its depth below the top. */
export function ordered({ nodes }: WhyTree): { node: WhyNode; depth: number }[] {
  const under = (parent: string | null, depth: number): { node: WhyNode; depth: number }[] =>
    nodes.filter((node) => node.parent === parent).flatMap((node) => [{ node, depth }, ...under(node.id, depth + 1)]);
  return under(null, 0);
}

/** A node and all below it. */
export function branchOf({ nodes }: WhyTree, id: string): Set<string> {
  const branch = new Set([id]);
  for (let size = 0; size < branch.size; ) {
    size = branch.size;
    for (const node of nodes) if (node.parent !== null && branch.has(node.parent)) branch.add(node.id);
  }
  return branch;
}
