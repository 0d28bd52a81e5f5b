"""Who works on the layouts of this service."""

from starlette.requests import Request

from casewright.solving.crew import Crew


def crew_of(request: Request) -> Crew:
    """The crew of the application."""
    crew: Crew = request.app.state.crew
    return crew
