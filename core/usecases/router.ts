import { implement } from '@orpc/server';
import { contract } from '../contract/contract.ts';
import { tickAgain } from './again.ts';
import { tickBroke } from './broke.ts';
import { jobsTouched, planDay, planReach, planTools } from './answers.ts';
import { awayBack, awaySend } from './away.ts';
import { kitSplit, pieceCount, pieceReceive, pieceScrap } from './counts.ts';
import { findingAccept, haltAdd, haltSeen, jobClose, renewOverride } from './findings.ts';
import { answer, type Context, type Reply } from './frame.ts';
import { historyList, historyRedo, historyState, historyUndo } from './history.ts';
import { jobAdd, jobChange } from './jobs.ts';
import { logAdd } from './log/add.ts';
import { markerJoin, markerNumber, markerPart } from './markers.ts';
import { needSettle, piecePromise } from './needs.ts';
import { photoFile, photoRemove, photoRole } from './photos.ts';
import { photoRolls, photoTray, removalsFromPhotos } from './photo-rolls.ts';
import { plannedBegin } from './pattern/begin.ts';
import { patternUse } from './pattern/copy.ts';
import { people, workshopInfo, workshopPut } from './people.ts';
import { partStow, recordChange, recordMake, recordRemove } from './record.ts';
import {
  removalEnd,
  removalMerge,
  removalReorder,
  removalRepeat,
  removalSplit,
  removalVoid,
} from './removals.ts';
import { jobsSample } from './sample.ts';
import { removalDid } from './removal-did.ts';
import { search } from './search.ts';
import { searchNear } from './search-near.ts';
import { itemLost, pieceFound, pieceGone, pieceMiss } from './searches.ts';
import { setSpec, setTorque } from './set-spec.ts';
import { setCount, setLengths, setStow, setTakeOut } from './sets.ts';
import { trayAccept } from './spill/accept.ts';
import { trayRead } from './spill/csv.ts';
import { boltWhose, trayMatch } from './spill/tray.ts';
import { planComeOff } from './reach-plan.ts';
import { tickRound } from './rounds.ts';
import { tickDo } from './ticks.ts';
import { jobCards, jobState, jobView } from './views.ts';
import { planWalk } from './walk.ts';
import type { Result } from '../model/result.ts';

const os = implement(contract).$context<Context>();

/** A reading result at the journal number it stands at. */
function read<T>(context: Context, result: Result<T>): Reply<T> {
  return result.ok ? answer(context, result.value) : result;
}

function draft(context: Context, key: string): Reply<{ text: string }> {
  return answer(context, { text: context.workshop.local?.draft(key) ?? '' });
}

function keepDraft(context: Context, key: string, text: string): Reply<{ said: string }> {
  context.workshop.local?.keepDraft(key, text, context.workshop.now());
  return answer(context, { said: '' });
}

/** The operations of the contract over the use cases: for the host, the command line and tests alike. */
export function makeRouter() {
  return os.router({
    workshop: {
      info: os.workshop.info.handler(({ context }) => answer(context, workshopInfo(context))),
      people: os.workshop.people.handler(({ context }) => answer(context, people(context))),
      put: os.workshop.put.handler(({ context, input }) => workshopPut(context, input)),
      draft: os.workshop.draft.handler(({ context, input }) => draft(context, input.key)),
      keepDraft: os.workshop.keepDraft.handler(({ context, input }) =>
        keepDraft(context, input.key, input.text),
      ),
      search: os.workshop.search.handler(({ context, input }) =>
        answer(context, search(context, input.text)),
      ),
      near: os.workshop.near.handler(({ context, input }) =>
        answer(context, searchNear(context, input.text)),
      ),
    },
    jobs: {
      list: os.jobs.list.handler(({ context }) => answer(context, jobCards(context))),
      add: os.jobs.add.handler(({ context, input }) => jobAdd(context, input)),
      change: os.jobs.change.handler(({ context, input }) => jobChange(context, input)),
      sample: os.jobs.sample.handler(({ context, input }) => jobsSample(context, input)),
      close: os.jobs.close.handler(({ context, input }) => jobClose(context, input)),
      state: os.jobs.state.handler(({ context, input }) => read(context, jobState(context, input.jobId))),
      view: os.jobs.view.handler(({ context, input }) => read(context, jobView(context, input.jobId))),
      touched: os.jobs.touched.handler(({ context, input }) => read(context, jobsTouched(context, input))),
    },
    record: {
      make: os.record.make.handler(({ context, input }) => recordMake(context, input)),
      change: os.record.change.handler(({ context, input }) => recordChange(context, input)),
      remove: os.record.remove.handler(({ context, input }) => recordRemove(context, input)),
    },
    photo: {
      file: os.photo.file.handler(({ context, input }) => photoFile(context, input)),
      draft: os.photo.draft.handler(({ context, input }) => removalsFromPhotos(context, input)),
      rolls: os.photo.rolls.handler(({ context, input }) => read(context, photoRolls(context, input))),
      tray: os.photo.tray.handler(({ context, input }) => read(context, photoTray(context, input.jobId))),
      remove: os.photo.remove.handler(({ context, input }) => photoRemove(context, input)),
      role: os.photo.role.handler(({ context, input }) => photoRole(context, input)),
    },
    marker: {
      join: os.marker.join.handler(({ context, input }) => markerJoin(context, input)),
      part: os.marker.part.handler(({ context, input }) => markerPart(context, input)),
      number: os.marker.number.handler(({ context, input }) => markerNumber(context, input)),
    },
    log: { add: os.log.add.handler(({ context, input }) => logAdd(context, input)) },
    removal: {
      did: os.removal.did.handler(({ context, input }) => removalDid(context, input)),
      end: os.removal.end.handler(({ context, input }) => removalEnd(context, input)),
      reorder: os.removal.reorder.handler(({ context, input }) => removalReorder(context, input)),
      split: os.removal.split.handler(({ context, input }) => removalSplit(context, input)),
      merge: os.removal.merge.handler(({ context, input }) => removalMerge(context, input)),
      repeat: os.removal.repeat.handler(({ context, input }) => removalRepeat(context, input)),
      void: os.removal.void.handler(({ context, input }) => removalVoid(context, input)),
    },
    ...thingRoutes(),
    ...workRoutes(),
  });
}

function thingRoutes() {
  return {
    set: {
      takeOut: os.set.takeOut.handler(({ context, input }) => setTakeOut(context, input)),
      stow: os.set.stow.handler(({ context, input }) => setStow(context, input)),
      lengths: os.set.lengths.handler(({ context, input }) => setLengths(context, input)),
      spec: os.set.spec.handler(({ context, input }) => setSpec(context, input)),
      torque: os.set.torque.handler(({ context, input }) => setTorque(context, input)),
      count: os.set.count.handler(({ context, input }) => setCount(context, input)),
    },
    part: { stow: os.part.stow.handler(({ context, input }) => partStow(context, input)) },
  };
}

function tickRoutes() {
  return {
    do: os.tick.do.handler(({ context, input }) => tickDo(context, input)),
    again: os.tick.again.handler(({ context, input }) => tickAgain(context, input)),
    broke: os.tick.broke.handler(({ context, input }) => tickBroke(context, input)),
    round: os.tick.round.handler(({ context, input }) => tickRound(context, input)),
  };
}

function workRoutes() {
  return {
    halt: {
      add: os.halt.add.handler(({ context, input }) => haltAdd(context, input)),
      seen: os.halt.seen.handler(({ context, input }) => haltSeen(context, input)),
    },
    tick: tickRoutes(),
    finding: { accept: os.finding.accept.handler(({ context, input }) => findingAccept(context, input)) },
    piece: {
      count: os.piece.count.handler(({ context, input }) => pieceCount(context, input)),
      miss: os.piece.miss.handler(({ context, input }) => pieceMiss(context, input)),
      found: os.piece.found.handler(({ context, input }) => pieceFound(context, input)),
      gone: os.piece.gone.handler(({ context, input }) => pieceGone(context, input)),
      receive: os.piece.receive.handler(({ context, input }) => pieceReceive(context, input)),
      scrap: os.piece.scrap.handler(({ context, input }) => pieceScrap(context, input)),
      kit: os.piece.kit.handler(({ context, input }) => kitSplit(context, input)),
      promise: os.piece.promise.handler(({ context, input }) => piecePromise(context, input)),
    },
    pattern: {
      use: os.pattern.use.handler(({ context, input }) => patternUse(context, input)),
      begin: os.pattern.begin.handler(({ context, input }) => plannedBegin(context, input)),
    },
    item: { lost: os.item.lost.handler(({ context, input }) => itemLost(context, input)) },
    tray: {
      read: os.tray.read.handler(({ context, input }) => answer(context, trayRead(input.text, input.unit))),
      match: os.tray.match.handler(({ context, input }) => read(context, trayMatch(context, input))),
      accept: os.tray.accept.handler(({ context, input }) => trayAccept(context, input)),
    },
    bolt: { whose: os.bolt.whose.handler(({ context, input }) => read(context, boltWhose(context, input))) },
    plan: {
      reach: os.plan.reach.handler(({ context, input }) => read(context, planReach(context, input))),
      comeOff: os.plan.comeOff.handler(({ context, input }) => planComeOff(context, input)),
      day: os.plan.day.handler(({ context, input }) => read(context, planDay(context, input))),
      walk: os.plan.walk.handler(({ context, input }) =>
        read(context, planWalk(context, input.jobId, input.by)),
      ),
      tools: os.plan.tools.handler(({ context, input }) => read(context, planTools(context, input.jobId))),
    },
    need: { settle: os.need.settle.handler(({ context, input }) => needSettle(context, input)) },
    away: {
      send: os.away.send.handler(({ context, input }) => awaySend(context, input)),
      back: os.away.back.handler(({ context, input }) => awayBack(context, input)),
    },
    renew: { override: os.renew.override.handler(({ context, input }) => renewOverride(context, input)) },
    history: {
      undo: os.history.undo.handler(({ context, input }) => historyUndo(context, input)),
      redo: os.history.redo.handler(({ context, input }) => historyRedo(context, input)),
      state: os.history.state.handler(({ context, input }) =>
        answer(context, historyState(context, input.jobId)),
      ),
      list: os.history.list.handler(({ context, input }) =>
        answer(context, historyList(context, input.jobId, input.limit)),
      ),
    },
  };
}
