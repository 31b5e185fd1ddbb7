import { service } from "../../../../lib/service";

const handle = (request: Request): Promise<Response> => service().signIn.handler(request);

export { handle as GET, handle as POST };
