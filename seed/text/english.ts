import type { Texts } from './texts.ts';

export const english: Texts = {
  seen: {
    tooling: [
      'Terminal {cavity} slightly bent upward behind the crimp, does not latch.',
      'Crimp looks tall, same look on several leads from this applicator.',
      'Carrier tab long, terminal sits proud in {cavity}.',
    ],
    handling: [
      'Lance pressed flat before insertion, leads came tangled out of the box.',
      'Two leads hooked into each other, lance bent sideways.',
      'Reel edge crushed, first terminals deformed.',
    ],
    partial_seat: [
      'No click felt in {cavity}. Pushed again, now holds.',
      'Secondary lock would not close until {cavity} was pushed home.',
      'Terminal short by about half a millimetre, lock undamaged.',
    ],
    misinsertion: [
      'Circuit in the wrong cavity, swapped with its neighbour at {cavity}.',
      'Terminal upside down in {cavity}, latch whitened.',
      'Pushed past the stop, orientation rib sheared.',
    ],
    probe_damage: [
      'Fresh mark inside the contact at {cavity}, contact opened.',
      'Passed the tester once, loose afterwards.',
      'Mating force of {cavity} clearly lower than its neighbours.',
    ],
    wire_dress: [
      'Wire at {cavity} pulled hard to the side, terminal tilted. Holds when the wire is freed.',
      'Tie sits right behind the housing, no slack.',
      'Branch too short, connector hangs on the wire.',
    ],
    adhesive: [
      'Residue behind {cavity}, terminal has no float.',
      'Clear film in the cavity, latch stuck open.',
      'Bond cracked, terminal moves backward under light pull.',
    ],
    component: [
      'Latch finger of {cavity} short, not fully moulded.',
      'Lance stands low, lot {lot}.',
      'Flash in {cavity}, terminal stops early.',
    ],
    application_limit: [
      'Came out under vibration, parts look as specified.',
      'No secondary lock on this position, load sideways.',
      'Backed out after heat soak, retention measured in specification.',
    ],
  },
  proof: {
    tooling: [
      'Crimp height out on five of five leads from the same applicator.',
      'Same bend on every part of this tool.',
    ],
    handling: ['Mixed directions of bend, no tool in common.', 'Lance flat on leads still in the box.'],
    partial_seat: ['Re-seats with a click and holds 50 N.', 'No witness mark on the lance, depth short.'],
    misinsertion: ['Continuity swapped, latch whitened.', 'Orientation feature sheared.'],
    probe_damage: [
      'Probe mark under the microscope; leads before the test are good.',
      'Same fixture position each time.',
    ],
    wire_dress: ['Holds once the tie is cut.', 'Lock intact, terminal tilted toward the branch.'],
    adhesive: ['Residue under ultraviolet light.', 'No float, cracked bond.'],
    component: ['Dimensional report of the lot attached.', 'Same cavity of one mould on all samples.'],
    application_limit: ['Retention in specification, load measured above it.'],
  },
  outside: [
    'Customer reports intermittent fault. ',
    'Returned from the customer line. ',
    'Workshop: fault after some months. ',
  ],
  reason: ['Returned part examined.', 'New evidence from the laboratory.', 'Compared with other reports of that week.'],
};
