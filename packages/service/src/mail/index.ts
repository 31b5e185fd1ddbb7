export { MailSettingError, type MailSettings, mailSettings } from "./policy";
export { createMailer, type LinkOf, type Mailer, sendAllNotices, startMailing } from "./write";
