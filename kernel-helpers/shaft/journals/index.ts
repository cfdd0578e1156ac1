// The journals as they were worn and as they are to be finished.
export {
  type FinishedJournal,
  type FinishedJournals,
  finishedJournals,
  type JournalGiven,
  type JournalLoad,
} from "./finished-journals.js";
export { type WornJournal, wornJournals } from "./worn-journals.js";
