/**
 * The whole recipe as a pattern that can be printed. For several sizes the numbers stand in the usual bracketed
 * order; the counts at the end of every round are read off what `work` makes, adjustments carried out.
 */
import {
  type Corner,
  countRound,
  type Plan,
  planFrontStrip,
  type Round,
  type Shape,
  work,
} from '../../../core/index.ts';
import { adjustmentsIn, sayAdjustments } from '../adjustments.ts';
import { sayAllowance, sayCut } from '../cloth/cut.ts';
import { isSameStrip } from '../recipe.ts';
import { STARTING_CHAINS } from '../walk/acts-round.ts';
import { takeAlongIn } from './catalogue.ts';
import type { Block, Section, Written } from './document.ts';
import type { PatternHeading, PatternMessages, WrittenLeg } from './messages.ts';
import { type Amount, type Counts, openWriter, type WriteOptions, type Writer } from './writing.ts';

/** Sizes of one pattern: the same sides, corners and rounds, with other counts. */
export type Sizes = { names: readonly string[]; plans: readonly [Plan, ...Plan[]] };

/** Everything the sentences are made from. */
type Job = Sizes & {
  first: Plan;
  options: WriteOptions;
  say: PatternMessages;
  writer: Writer;
  cornered: boolean;
  /** The rounds as made, of every size: the foundation, then the edgings. */
  rounds: readonly (readonly Round[])[];
};

export const writeOut = (plan: Plan, options: WriteOptions): Written =>
  writeSizes({ names: [], plans: [plan] }, options);

export function writeSizes(sizes: Sizes, options: WriteOptions): Written {
  const job = jobOf(sizes, options);
  const { say, writer } = job;
  const body = [foundation(job), ...edgings(job), ...frontStrip(job), sewing(job), join(job)];
  const special = section(
    job,
    'special',
    paragraphs([say.special({ corner: job.first.foundation.corners[0] ?? null }, writer)]),
  );
  // Written last: only now is it known which terms were written short.
  const tension = section(job, 'tension', paragraphs([say.tension(writer)]));
  const opening = [
    ...sizesSection(job),
    panel(job),
    materials(job),
    tension,
    abbreviations(job),
    special,
    counting(job),
  ];
  const { title, designer, notes } = options;
  return {
    language: writer.speaker.language,
    title: title?.trim() || say.untitled,
    head: [
      ...(designer?.trim() ? [say.by({ designer: designer.trim() }, writer)] : []),
      `${say.terms(writer)}. ${say.hand(writer)}`,
      say.intro(writer),
    ],
    sections: [
      ...opening,
      ...body,
      ...(notes?.trim() ? [section(job, 'notes', [{ kind: 'paragraph', text: notes.trim() }])] : []),
    ],
  };
}

function jobOf(sizes: Sizes, options: WriteOptions): Job {
  const writer = openWriter(options);
  const [first] = sizes.plans;
  const rounds = sizes.plans.map((plan) => {
    const made = work(plan, options.adjustments);
    return [made.foundation, ...made.edgings];
  });
  const say = takeAlongIn(writer.speaker).pattern;
  return { ...sizes, first, options, say, writer, rounds, cornered: first.edge.corners.length > 0 };
}

const section = ({ say, writer }: Job, of: PatternHeading, blocks: Block[]): Section => ({
  heading: say.heading({ of }, writer),
  blocks,
});

const each = ({ plans }: Pick<Job, 'plans'>, of: (plan: Plan) => number): Amount => plans.map(of);

/** The counts of rounds that are alike but for the size. */
function countsOf(shapes: readonly Shape[]): Counts {
  const [first] = shapes;
  const corners: readonly Corner[] = first?.corners ?? [];
  return {
    sides: (first?.sides ?? []).map((_, side) => shapes.map(({ sides }) => sides[side] ?? 0)),
    corners,
    total: shapes.map(({ sides, corners: own }) => sum([...sides, ...own.map(({ size }) => size)])),
  };
}

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);

const countsMade = ({ rounds }: Job, round: number): Counts =>
  countsOf(rounds.map((of) => countRound(of[round] as Round)));

function sizesSection(job: Job): Section[] {
  const { names, plans, say, writer } = job;
  if (plans.length < 2) return [];
  const { size, panel: front, foundation: base, edging, total } = say.sizeHead;
  const { plain } = writer.speaker.formatting;
  const list = (sides: readonly number[]): string =>
    sides.length > 1 && sides.every((side) => side === sides[0])
      ? `${plain(sides.length)} × ${plain(sides[0] ?? 0)}`
      : sides.map(plain).join(', ');
  const rows = plans.map((plan, i) => [
    names[i] ?? '',
    list(plan.edge.sides),
    list(plan.foundation.sides),
    list(plan.edgings.at(-1)?.sides ?? []),
    plain(plan.pairs),
  ]);
  return [
    section(job, 'sizes', [
      { kind: 'paragraph', text: say.sizesKnown({ names }, writer) },
      { kind: 'table', head: [size, front, base, edging, total], rows },
    ]),
  ];
}

function panel(job: Job): Section {
  const { say, writer, plans, cornered } = job;
  const counts = countsOf(plans.map(({ edge }) => edge));
  const order = cornered ? [say.panelOrder({ sides: counts.sides.length }, writer)] : [];
  return section(job, 'panel', paragraphs([say.panel(counts, writer), ...order]));
}

const paragraphs = (texts: readonly string[]): Block[] => texts.map((text) => ({ kind: 'paragraph', text }));

function materials(job: Job): Section {
  const { say, writer, first, options } = job;
  const markers = first.edge.corners.length + Math.max(...job.plans.map(markersOf));
  return section(job, 'materials', [
    {
      kind: 'list',
      items: say.materials.map((item) => item({ markers, becomes: options.becomes ?? 'cushion' }, writer)),
    },
  ]);
}

/** One to begin with, and one after every so many stitches of the foundation's legs. */
const markersOf = ({ foundation, choices }: Plan): number =>
  1 +
  sum(
    [foundation.lead, ...foundation.sides.slice(1), foundation.tail].map((leg) =>
      Math.floor(leg / choices.markerEvery),
    ),
  );

/** By the letters of what is written short. */
function abbreviations(job: Job): Section {
  const { say, writer } = job;
  const ids = [...writer.shorts].sort((one, other) =>
    writer.term(one, 'short').localeCompare(writer.term(other, 'short'), writer.speaker.language),
  );
  return section(job, 'abbreviations', [
    { kind: 'list', items: ids.map((id) => say.abbreviation({ id }, writer)) },
  ]);
}

function counting(job: Job): Section {
  const { say, writer, first, cornered } = job;
  const { foundationStart, foundationClosing, edgingClosing } = first.choices;
  const [corner] = first.edge.corners;
  return section(job, 'counting', [
    {
      kind: 'list',
      items: [
        ...(corner ? [say.places(writer), say.countedApart({ made: corner.made }, writer)] : []),
        say.startingChains({ count: foundationStart.counts }, writer),
        say.closings({ foundation: foundationClosing.adds, edging: edgingClosing.adds }, writer),
        ...(cornered ? [say.faces({ faces: first.faces }, writer)] : []),
      ],
    },
  ]);
}

function foundation(job: Job): Section {
  const { say, writer, first, cornered } = job;
  const { foundationStart, foundationClosing, markerEvery } = first.choices;
  return section(job, 'foundation', [
    {
      kind: 'acts',
      items: [
        say.begin(
          {
            front: cornered ? (first.faces[0] ?? 0) : null,
            chains: STARTING_CHAINS,
            counts: foundationStart.counts,
          },
          writer,
        ),
        say.legs({ legs: legsOf(job.plans) }, writer),
        say.markers({ every: markerEvery, cornered }, writer),
        ...adjustments(job, 'foundation', 0),
        say.closeFoundation({ adds: foundationClosing.adds, cornered }, writer),
      ],
    },
    { kind: 'paragraph', text: say.counts({ counts: countsMade(job, 0), of: 'foundation' }, writer) },
  ]);
}

/** Lead, the whole sides, tail; legs that are alike on end are told once. */
function legsOf(plans: Job['plans']): WrittenLeg[] {
  const { corners, sides } = plans[0].foundation;
  const all = { plans };
  const whole = sides.slice(1).map((_, i) => each(all, ({ foundation: of }) => of.sides[i + 1] ?? 0));
  const lead = each(all, ({ foundation: of }) => of.lead);
  const tail = each(all, ({ foundation: of }) => of.tail);
  const counts = corners.length > 0 ? [lead, ...whole, tail] : [lead];
  const legs: WrittenLeg[] = [];
  counts.forEach((count, i) => {
    const leg: WrittenLeg = { count, corner: corners[i] ?? null, times: 1 };
    const last = legs.at(-1);
    if (last && isAlike(last, leg)) last.times++;
    else legs.push(leg);
  });
  return legs;
}

const isAlike = (one: WrittenLeg, other: WrittenLeg): boolean =>
  one.corner?.size === other.corner?.size &&
  one.corner?.made === other.corner?.made &&
  one.count.every((count, i) => count === other.count[i]);

/** The second strip, where the front is cloth too: only its numbers, which `work` makes, and only where they differ. */
function frontStrip(job: Job): Section[] {
  const { say, writer, plans, options, first } = job;
  if (!options.isOfCloth) return [];
  const turned = plans.flatMap((plan) => {
    const made = planFrontStrip(plan);
    return made.ok ? [made.value] : [];
  });
  const [one, ...others] = turned;
  if (!one || turned.every((strip, i) => isSameStrip(strip, plans[i] as Plan)))
    return [section(job, 'front-strip', paragraphs([say.frontSame(writer)]))];
  const rounds = turned.map((plan) => work(plan));
  const edgingRounds = first.edgings.map((_, round) =>
    countsOf(rounds.map(({ edgings: of }) => countRound(of[round] as Round))),
  );
  return [
    section(job, 'front-strip', [
      { kind: 'paragraph', text: say.frontMirrored({ side: first.choices.start.side }, writer) },
      {
        kind: 'list',
        items: [
          say.legs({ legs: legsOf([one, ...others]) }, writer),
          say.counts(
            { counts: countsOf(rounds.map(({ foundation: of }) => countRound(of))), of: 'foundation' },
            writer,
          ),
          ...edgingRounds.map(
            (counts, round) =>
              `${say.edgingRound({ round, rounds: edgingRounds.length }, writer)}: ${say.counts({ counts, of: 'edging' }, writer)}`,
          ),
        ],
      },
    ]),
  ];
}

function edgings(job: Job): Section[] {
  const { first } = job;
  return [
    section(
      job,
      'edging',
      first.edgings.flatMap((_, round) => edgingRound(job, round)),
    ),
  ];
}

function edgingRound(job: Job, round: number): Block[] {
  const { say, writer, first, cornered } = job;
  const { adds } = first.choices.edgingClosing;
  const increase = each(job, ({ edgings: of }) => of[round]?.increase ?? 0);
  return [
    { kind: 'paragraph', text: say.edgingRound({ round, rounds: first.edgings.length }, writer) },
    {
      kind: 'acts',
      items: [
        say.joinYarn({ adds, cornered }, writer),
        say.alongSides(writer),
        ...(cornered ? cornersOf(job, round) : []),
        ...(increase.some((count) => count > 0) ? [say.increase({ count: increase }, writer)] : []),
        ...adjustments(job, 'edging', round),
        say.closeEdging({ adds, cornered }, writer),
      ],
    },
    { kind: 'paragraph', text: say.counts({ counts: countsMade(job, round + 1), of: 'edging' }, writer) },
  ];
}

/** What is worked in the corners, and where it goes. */
function cornersOf({ say, writer, first }: Job, round: number): string[] {
  const { arm, corners } = first.edgings[round] as Plan['edgings'][number];
  const [one] = corners;
  if (!one) return [];
  const areAlike = corners.every(({ made, size }) => made === one.made && size === one.size);
  const worked = areAlike
    ? [say.everyCorner({ arm, corner: one }, writer)]
    : corners.map((corner, index) => say.oneCorner({ index, arm, corner }, writer));
  return [...worked, say.intoCorner({ arm, corner: one.size > 0 ? one.made : 'chain' }, writer)];
}

/** What is to be worked otherwise in a round, in the words the recipe has for it. */
function adjustments(
  { options, first, rounds }: Job,
  round: 'foundation' | 'edging' | 'join',
  edging: number,
): string[] {
  const [own = []] = rounds;
  const made = own[round === 'foundation' ? 0 : edging + 1] ?? own.at(-1);
  const { terms, hand, units } = options;
  const speech = { dialect: terms === 'us' ? terms : 'uk', hand, units } as const;
  return adjustmentsIn(options.adjustments ?? [], round, edging).map((acts) =>
    sayAdjustments(acts, first, made ? countRound(made).sides : [], speech),
  );
}

const cutOf = ({ options: { cloth, units } }: Job) =>
  cloth ? { size: sayCut(cloth, units).size, allowance: sayAllowance(cloth, units) } : null;

const sewing = (job: Job): Section =>
  section(job, 'sewing', [
    {
      kind: 'acts',
      items: [
        job.say.cut({ cut: cutOf(job) }, job.writer),
        ...(job.options.isOfCloth ? [job.say.frontSewn(job.writer)] : []),
        ...job.say.sewing.map((act) => act({ cornered: job.cornered }, job.writer)),
      ],
    },
  ]);

function join(job: Job): Section {
  const { say, writer, first, cornered, options } = job;
  const { open } = first.choices;
  const { side } = first.choices.joinStart;
  const fromCorner = each(job, ({ choices }) => choices.joinStart.fromCorner);
  const { corners } = first.edge;
  const beside = corners.at(side - 1) ?? null;
  const last = cornered && corners.length > 1 ? (side + corners.length - 1) % corners.length : null;
  return section(job, 'join', [
    {
      kind: 'acts',
      items: [
        say.layTogether(
          { first: cornered ? { panel: side, back: first.faces.indexOf(side) } : null },
          writer,
        ),
        open === undefined
          ? say.beginJoin({ side, back: first.faces.indexOf(side), fromCorner, corner: beside }, writer)
          : say.beginOpen({ side: open }, writer),
        ...adjustments(job, 'join', 0),
        say.slipStitches({ pairs: each(job, ({ pairs }) => pairs), cornered }, writer),
        ...(open === undefined
          ? [say.padIn({ last, becomes: options.becomes ?? 'cushion' }, writer), say.lastHole(writer)]
          : [say.leaveOpen({ side: open }, writer)]),
      ],
    },
  ]);
}
