/**
 * By how much an edge has changed in the fittings. Its own entries in the log count; an edge without entries takes the
 * change of the edges that it is sewn to, carried along the list of seams through plain and eased seams.
 */
import { isMeant, misspeltPhrase, nearestWord } from "../nearest-word.ts";
import { phrase } from "../phrase.ts";
import { Refusal } from "../refusal.ts";
import { joinedByAnd } from "../verdict.ts";
import { cellOfLog, type FittingLog, type LogEntry, type SeamEnd } from "./log-list.ts";
import { misspeltSeam } from "./misspelt-seam.ts";
import { edgeKeys, listedEdges, type Seam } from "./seam-list.ts";

/** The change of one edge in the log. */
export interface OwnChange {
  readonly name: string;
  readonly entries: readonly LogEntry[];
  /** Sum of the amounts all round, and of those for each side, which count twice. */
  readonly allRound: number;
  readonly eachSide: number;
}

export interface EdgeChange {
  /** The edges whose entries count: the edge itself, or its neighbours. */
  readonly from: readonly OwnChange[];
  /** Edges passed on the way, from the changed edge to the one asked about; empty for its own entries. */
  readonly way: readonly string[];
  /** Sentences about changes that are not counted, or not twice: that could not be carried, or that the log has under the neighbour's name too. */
  readonly uncounted: readonly string[];
}

export const netOf = ({ allRound, eachSide }: OwnChange): number => allRound + 2 * eachSide;
const sumOf = (from: readonly OwnChange[]): number => from.reduce((sum, one) => sum + netOf(one), 0);

/** The most ways along the seams that are followed. Only a list in which nearly every edge is sewn to every other has more. */
const MOST_WAYS = 3000;

interface Source {
  readonly from: readonly OwnChange[];
  readonly way: readonly string[];
}

/**
 * The change of the edge called `name`, "bodice waist", at one end of it where `end` says so. Refuses a name
 * that neither the log nor the list of seams has, an entry whose name is a misspelling of one in the list
 * or the other way round, and neighbours whose changes disagree.
 */
export function changeOf(
  name: string,
  end: SeamEnd | null,
  log: FittingLog,
  seams: readonly Seam[],
): EdgeChange {
  const listed = listedEdges(seams);
  refuseMisspelt(log, listed, seams);
  if (!log.names.has(name) && !listed.has(name)) {
    const near = nearestWord(name, [...listed, ...log.names]);
    const slip = near === undefined ? null : misspeltSeam(name, near, seams);
    if (slip) throw new Refusal(slip.sentence, slip.at);
    throw new Refusal(phrase`neither the fitting log nor the list of seams knows "${name}"${isMeant(near)}`);
  }
  const own = ownChange(name, end, log);
  if (own) return { from: [own], way: [], uncounted: loggedOtherwise(name, end, log, seams) };
  const open: string[] = [];
  let ways = 0;
  const sources = sourcesOf(name, new Set([name]));
  const first = agreed(name, sources);
  if (!first) return { from: [], way: [], uncounted: open.slice(0, 1) };
  const both = first.from.flatMap((one) => loggedOtherwise(one.name, end, log, seams));
  return { ...first, uncounted: [...new Set([...both, ...agreeing(name, sources)])].slice(0, 1) };

  /** The changes that reach an edge through its seams, without passing an edge twice. */
  function sourcesOf(edge: string, passed: ReadonlySet<string>): Source[] {
    ways += 1;
    if (ways > MOST_WAYS)
      throw new Refusal(
        phrase`the list of seams connects its edges in too many circles to carry a change along it: delete rows that sew together what other rows connect already`,
      );
    return seams.flatMap((seam): Source[] => {
      const keys = seam.sides.map(edgeKeys);
      const mine = keys.findIndex((side) => side.includes(edge));
      if (mine < 0) return [];
      const others = [...new Set(keys[1 - mine]!)];
      if (others.some((one) => passed.has(one))) return [];
      if (seam.how !== "plain" && seam.how !== "eased") {
        if (edge === name && entriesOfSide(others, end, log).length > 0)
          open.push(
            phrase`${joinedByAnd(inQuotes(others))} was altered, and "${edge}" is ${seam.how} to it, so the change is not carried: write in the fitting log by how much "${edge}" is to be altered`,
          );
        return [];
      }
      const next = new Set([...passed, ...others]);
      const reached = others.map((one) => reach(one, next));
      if (new Set(keys[mine]).size > 1) {
        const changed = reached.flatMap((one) => one ?? []);
        if (changed.some(({ from }) => Math.abs(sumOf(from)) > 1e-12))
          open.push(
            phrase`${joinedByAnd(inQuotes(others))} was altered, and nothing says how much of it falls to "${edge}", one of ${new Set(keys[mine]).size} edges sewn to it: write each in the fitting log`,
          );
        return [];
      }
      const parts = reached.filter((one) => one !== null);
      if (parts.length === 0) return [];
      if (parts.length === 1) return parts[0]!.map((one) => ({ ...one, way: [...one.way, edge] }));
      // Of edges in succession the changes add up; one that nobody altered has changed by nothing.
      const firsts = others.flatMap((one, i) => agreed(one, reached[i] ?? []) ?? []);
      return [
        {
          from: firsts.flatMap(({ from }) => from),
          way: [...new Set(firsts.flatMap(({ way }) => way)), edge],
        },
      ];
    });
  }

  /** The changes that reach an edge: its own, or those of its other neighbours. Returns null when no change reaches it. */
  function reach(edge: string, passed: ReadonlySet<string>): Source[] | null {
    const change = ownChange(edge, end, log);
    if (change) return [{ from: [change], way: [edge] }];
    const further = sourcesOf(edge, passed);
    return further.length > 0 ? further : null;
  }
}

/** The change of an edge. Refuses sources that disagree about it; returns undefined when no source has a change. */
function agreed(edge: string, [first, ...others]: readonly Source[]): Source | undefined {
  const other = others.find((one) => Math.abs(sumOf(one.from) - sumOf(first!.from)) > 1e-9);
  if (first && other)
    throw new Refusal(
      (say) =>
        phrase`the edges sewn to "${edge}" disagree, ${carried(first, say)} and ${carried(other, say)}: write in the fitting log by how much "${edge}" itself was altered`,
    );
  return first;
}

function carried({ from }: Source, say: (length: number, ...beside: number[]) => string): string {
  const net = sumOf(from);
  const names = joinedByAnd(inQuotes(from.map(({ name }) => name)));
  if (net === 0) return phrase`${names} unaltered`;
  return net > 0 ? phrase`${names} let out ${say(net, 0)}` : phrase`${names} taken in ${say(-net, 0)}`;
}

/** The entries of several edges at one end of them; those of one end only do not count where no end is asked for. */
const entriesOfSide = (
  names: readonly string[],
  end: SeamEnd | null,
  { entries }: FittingLog,
): readonly LogEntry[] =>
  entries.filter((entry) => names.includes(entry.name) && (entry.end === null || entry.end === end));

/** A sentence about several entries that reach an edge by different ways with the same amount, and count once; empty when one does. */
function agreeing(edge: string, sources: readonly Source[]): string[] {
  const named = ({ from }: Source) => joinedByAnd(inQuotes(from.map(({ name }) => name)));
  const [first, ...others] = sources.filter((one) => sumOf(one.from) !== 0);
  const other = others.find((one) => named(one) !== named(first!));
  if (!first || !other) return [];
  return [
    phrase`the fitting log alters ${named(first)} and ${named(other)}, which are both sewn to "${edge}", by the same amount: that is counted once, as one change that was written down for both; where these are two changes, write both under one name`,
  ];
}

/** A seam that the log alters under the names of both its sides. */
export interface TwiceLogged {
  /** The names of its edges, by side. */
  readonly names: readonly [readonly string[], readonly string[]];
  readonly entries: readonly [readonly LogEntry[], readonly LogEntry[]];
  /** Whether both sides change by the same amount, so that they agree. */
  readonly isAlike: boolean;
}

/**
 * The seams that the log alters under both of their names, at one end or all along. Sewn together, both sides
 * must change alike: where their amounts differ, a seam was logged now under one name, now under the other, and
 * counts only in part; where they agree, they count as one alteration.
 */
export function loggedTwice(end: SeamEnd | null, log: FittingLog, seams: readonly Seam[]): TwiceLogged[] {
  const sum = (entries: readonly LogEntry[]) =>
    entries.reduce((total, { amount, eachSide }) => total + (eachSide ? 2 : 1) * amount, 0);
  return seams.flatMap((seam) => {
    if (seam.how !== "plain" && seam.how !== "eased") return [];
    const names = [edgeKeys(seam.sides[0]), edgeKeys(seam.sides[1])] as const;
    // An edge that is sewn to its own twin, such as a centre back, has one name.
    if (names[0].some((name) => names[1].includes(name))) return [];
    const entries = [entriesOfSide(names[0], end, log), entriesOfSide(names[1], end, log)] as const;
    if (entries.some((side) => side.length === 0)) return [];
    return [{ names, entries, isAlike: Math.abs(sum(entries[0]) - sum(entries[1])) <= 1e-9 }];
  });
}

/** What the log says of an edge under the other names of its seams: not counted with its own entries, or the same once more. */
const loggedOtherwise = (
  name: string,
  end: SeamEnd | null,
  log: FittingLog,
  seams: readonly Seam[],
): string[] =>
  loggedTwice(end, log, seams).flatMap(({ names, entries, isAlike }) => {
    const mine = names.findIndex((side) => side.includes(name));
    if (mine < 0) return [];
    const other = entryNames(entries[1 - mine]!);
    return [
      isAlike
        ? phrase`the fitting log alters ${entryNames(entries[mine]!)} and ${other}, which are sewn together, by the same amount: that is counted once, as one change that was written down for both; where these are two changes, write both under one name`
        : phrase`the fitting log alters ${other} as well, which is sewn to "${name}", by another amount: that is not counted here; write all changes of one seam under one name`,
    ];
  });

/** The names of some entries, each once: '"front waist" and "back waist"'. */
export const entryNames = (entries: readonly LogEntry[]): string =>
  joinedByAnd(inQuotes([...new Set(entries.map(({ name }) => name))]));

const inQuotes = (names: readonly string[]): string[] => names.map((name) => `"${name}"`);

/**
 * The edge's own change. Returns null when it has no entries that alter this end of it. Refuses a question about the
 * whole edge when only one end of it was altered.
 */
function ownChange(name: string, end: SeamEnd | null, { entries }: FittingLog): OwnChange | null {
  const own = entries.filter((entry) => entry.name === name);
  if (own.length === 0) return null;
  const atEnd = own.find((entry) => entry.end !== null);
  if (end === null && atEnd)
    throw new Refusal(
      phrase`row ${atEnd.number} of the fitting log alters "${name}" at the ${atEnd.end!} only: ask for its top or its bottom`,
      cellOfLog(atEnd.places, "end"),
    );
  const counted = own.filter((entry) => entry.end === null || entry.end === end);
  if (counted.length === 0) return null;
  const sum = (each: boolean) =>
    counted.reduce((total, { amount, eachSide }) => total + (eachSide === each ? amount : 0), 0);
  return { name, entries: counted, allRound: sum(false), eachSide: sum(true) };
}

/** An entry that names no edge of the list, and is near one, is misspelt: it would count for nothing. */
function refuseMisspelt({ entries }: FittingLog, listed: ReadonlySet<string>, seams: readonly Seam[]): void {
  for (const { name, number, places } of entries) {
    if (listed.size === 0 || listed.has(name)) continue;
    const meant = misspeltPhrase(name, listed);
    if (!meant) continue;
    const slip = misspeltSeam(name, meant, seams);
    throw slip
      ? new Refusal(slip.sentence, slip.at)
      : new Refusal(
          phrase`row ${number} of the fitting log names "${name}", and the list of seams has no such edge; is "${meant}" meant?`,
          cellOfLog(places, "seam"),
        );
  }
}
