"""The fixed wording: Jinja2 templates by sheet and level. The only place that knows Jinja2.

A template file holds named blocks, each one wording: `{% block heading %}Who was {{ study.study }}?{% endblock %}`.
`templates/<sheet>/<level>.j2` is looked at first, then `templates/<sheet>/common.j2`, then `templates/common.j2`; in
each place a family's own templates come before packgen's. What a study says is passed in as plain values and never
parsed.
"""

from __future__ import annotations

import contextlib
from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import Any

from jinja2 import FileSystemBytecodeCache, FileSystemLoader, StrictUndefined, Template, TemplateError, TemplateNotFound
from jinja2.bccache import Bucket
from jinja2.sandbox import ImmutableSandboxedEnvironment

from packgen.faults import WorkFailed
from packgen.resources import cache_folder


class _Compiled(FileSystemBytecodeCache):
    """Templates as they were compiled in an earlier build; a folder that cannot be written is done without."""

    def dump_bytecode(self, bucket: Bucket) -> None:
        with contextlib.suppress(OSError):
            super().dump_bytecode(bucket)


class Wording:
    """All wordings, from one or more folders of templates; the first folder that has a wording wins."""

    def __init__(self, folders: Sequence[Path]) -> None:
        cache = cache_folder()
        compiled = _Compiled(str(cache), "wording-%s") if cache else None
        self._places = [
            ImmutableSandboxedEnvironment(
                loader=FileSystemLoader(folder), undefined=StrictUndefined, trim_blocks=True, lstrip_blocks=True,
                bytecode_cache=compiled,
            )
            for folder in folders
        ]  # fmt: skip
        self._found: dict[tuple[str, str, str], Template | None] = {}

    def say(self, sheet: str, level: str, key: str, values: Mapping[str, Any]) -> str:
        """One wording as one line of text. Raises WorkFailed if no template has it or it does not render."""
        return " ".join(self._render(sheet, level, key, values).split())

    def lines(self, sheet: str, level: str, key: str, values: Mapping[str, Any]) -> tuple[str, ...]:
        """A wording of several lines as a tuple, one entry a line; empty lines are left out."""
        rows = self._render(sheet, level, key, values).splitlines()
        return tuple(" ".join(row.split()) for row in rows if row.strip())

    def text(self, sheet: str, level: str, key: str, values: Mapping[str, Any]) -> str:
        """A wording as it stands in its template, line breaks and indentation kept."""
        return self._render(sheet, level, key, values)

    def has(self, sheet: str, level: str, key: str) -> bool:
        """True if some template has this wording."""
        return self._template(sheet, level, key) is not None

    def _render(self, sheet: str, level: str, key: str, values: Mapping[str, Any]) -> str:
        template = self._template(sheet, level, key)
        if template is None:
            raise WorkFailed(f'no template has the wording "{key}" for the sheet "{sheet}" at the level "{level}"')
        try:
            return "".join(template.blocks[key](template.new_context(dict(values))))
        except TemplateError as error:
            raise WorkFailed(f'the wording "{key}" in {template.filename} does not render: {error}') from error

    def _template(self, sheet: str, level: str, key: str) -> Template | None:
        known = (sheet, level, key)
        if known not in self._found:
            self._found[known] = self._search(sheet, level, key)
        return self._found[known]

    def _search(self, sheet: str, level: str, key: str) -> Template | None:
        for name in (f"{sheet}/{level}.j2", f"{sheet}/common.j2", "common.j2"):
            for place in self._places:
                try:
                    template = place.get_template(name)
                except TemplateNotFound:
                    continue
                except TemplateError as error:
                    raise WorkFailed(f"the template {name} cannot be read: {error}") from error
                if key in template.blocks:
                    return template
        return None
