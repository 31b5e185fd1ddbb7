import { describe, expect, test } from "vitest";
import { attribute, markup, readText, tags } from "../../test/markup";
import { InvitationPage } from "./invitation-page";
import { SignInPage } from "./sign-in-page";

describe("signing in", () => {
  test("posts address and password, and where to go afterwards", () => {
    const html = markup(<SignInPage action="/sign-in" next="/club/sandvaer" email="a@b.example" />);
    expect(attribute(tags(html, "form")[0], "method")).toBe("post");
    const inputs = tags(html, "input").map((tag) => [attribute(tag, "name"), attribute(tag, "value")]);
    expect(inputs).toEqual([
      ["next", "/club/sandvaer"],
      ["email", "a@b.example"],
      ["password", undefined],
    ]);
  });

  test("never sends a password back", () => {
    const refusal = { what: "Wrong.", remedy: "Check." };
    const password = tags(markup(<SignInPage action="/x" refusal={refusal} />), "input").find((tag) =>
      tag.includes("password"),
    );
    expect(attribute(password, "autocomplete")).toBe("current-password");
    expect(password).not.toContain("value=");
  });

  test("shows a password only for the demo world", () => {
    expect(readText(<SignInPage action="/x" />)).not.toMatch(/demo/i);
    const demo = { password: "one two three", people: [{ email: "ase@sandvaer.example", as: "registrar" }] };
    expect(readText(<SignInPage action="/x" demo={demo} />)).toContain(
      "one two three ase@sandvaer.example registrar",
    );
  });
});

describe("accepting an invitation", () => {
  const invitation = {
    club: "Sandvær Register",
    email: "kari@sandvaer.example",
    roles: ["owner"],
    expires: "3 December 2026",
    hasAccount: false,
  };

  test("says where to, as what, until when, and asks for a name and a new password", () => {
    const page = <InvitationPage action="/x" invitation={invitation} passwordMinimum={12} />;
    expect(readText(page)).toContain(
      "invites kari@sandvaer.example as owner. The invitation holds until 3 December 2026",
    );
    const names = tags(markup(page), "input").map((tag) => attribute(tag, "name"));
    expect(names).toEqual(["email", "name", "password"]);
    expect(markup(page)).toContain('minLength="12"');
  });

  test("asks who is known here for the password they have", () => {
    const page = (
      <InvitationPage action="/x" invitation={{ ...invitation, hasAccount: true }} passwordMinimum={12} />
    );
    expect(tags(markup(page), "input").map((tag) => attribute(tag, "name"))).toEqual(["email", "password"]);
    expect(markup(page)).toContain('autoComplete="current-password"');
  });

  test("a link that is not valid gives no form", () => {
    const refusal = { what: "This invitation has run out.", remedy: "Ask the registrar for a new one." };
    const page = <InvitationPage action="/x" refusal={refusal} passwordMinimum={12} />;
    expect(tags(markup(page), "form")).toHaveLength(0);
    expect(readText(page)).toContain("run out");
  });
});
