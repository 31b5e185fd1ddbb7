export { listNotices, type NoticeLine } from "./read";
export { type OutgoingNotice, type SendNotice, sendNotices, tellOfStep } from "./write";
