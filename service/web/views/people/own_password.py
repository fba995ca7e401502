"""One's own password."""

from __future__ import annotations

from typing import Annotated

from fastapi import APIRouter, Form, Request, Response
from pydantic import BaseModel, Field

from service.errors import PasswordError, SignInError
from service.keeping.people.passwords import LEAST_CHARACTERS
from service.keeping.people.signing_in import begin_session
from service.keeping.people.users import change_own_password
from service.languages.saying import said, say
from service.sentence import Sentence
from service.store.people.role import Role
from service.web.access.cookies import set_session
from service.web.access.entrance import MOST_BODY_BYTES, TheEntrance
from service.web.access.gate import GatedRoute, needs
from service.web.access.porter import TheReader
from service.web.replies.refusals import RefusedError
from service.web.store.people.sessions import refuse_without_session
from service.web.views.people.sign_in import device_of
from service.web.views.people.telling import fill_again, show_refused
from service.web.views.shell.forms import FilledForm
from service.web.views.shell.notice import Notice, go_to
from service.web.views.shell.page import show_page
from service.web.views.shell.reader import ThePageActing

router = APIRouter(route_class=GatedRoute, max_body_size=MOST_BODY_BYTES)

_PAGE = "people/own_password.html"
_VALUES = {"least": LEAST_CHARACTERS}
_WRONG = Sentence("This is not your password as it is now.")


class PasswordForm(BaseModel):
    """The password there is, and the new one."""

    current: str = Field(default="", repr=False)
    password: str = Field(default="", repr=False)


@router.get("/people/password", include_in_schema=False, dependencies=[needs(Role.VIEW)])
def ask(request: Request) -> Response:
    """Ask for the password there is, and a new one."""
    return show_page(request, _PAGE, {"form": FilledForm(), **_VALUES})


@router.post("/people/password", include_in_schema=False, dependencies=[needs(Role.VIEW)])
def change(
    request: Request,
    acting: ThePageActing,
    reader: TheReader,
    entrance: TheEntrance,
    sent: Annotated[PasswordForm, Form()],
) -> Response:
    """Change it: everything else that was signed in has to sign in anew."""
    refuse_without_session(reader)
    try:
        entrance.count(reader.name)
        with acting.counter.writing() as connection:
            user = change_own_password(
                connection,
                reader.name,
                current=sent.current,
                password=sent.password,
                stamp=acting.stamp,
            )
            signed = begin_session(connection, user, device_of(request), now=acting.stamp.at)
    except RefusedError as refused:
        return show_refused(request, _PAGE, _VALUES, {}, refused=refused)
    except PasswordError as error:
        return _show(request, fill_again({}, error))
    except SignInError:
        return _show(request, FilledForm({}, {"current": said(_WRONG)}))
    words = say("You have a new password. Your other devices have to sign in anew.")
    response = go_to("/you", Notice(words))
    set_session(request, response, signed.secret)
    return response


def _show(request: Request, form: FilledForm) -> Response:
    return show_page(request, _PAGE, {"form": form, **_VALUES}, status=form.status)
