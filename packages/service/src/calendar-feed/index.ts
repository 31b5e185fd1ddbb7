export { type FeedLine, type FeedPage, feedPage, type ReadFeedInput, readFeed } from "./read";
export { type AddFeedInput, addFeed, addFeedInput, removeFeed, removeFeedInput } from "./write";
