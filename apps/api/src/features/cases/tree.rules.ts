import type { WhyNode, WhyTree } from '#contracts/case-parts.ts';

/** The nodes as they are read: each before what explains it, with its depth below the top. */
export function orderedNodes({ nodes }: WhyTree): { node: WhyNode; depth: number }[] {
  const under = (parent: string | null, depth: number): { node: WhyNode; depth: number }[] =>
    nodes.filter((node) => node.parent === parent).flatMap((node) => [{ node, depth }, ...under(node.id, depth + 1)]);
  return under(null, 0);
}
