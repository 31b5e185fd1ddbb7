export {
  ownSubmissions,
  type QueuedSubmission,
  type ReviewQueue,
  reviewQueue,
  type SubmissionBrief,
} from "./read";
