"""The first document of a list is a JSON Schema (2020-12); says of each of the others whether it is valid by Debian's python3-jsonschema."""
import json
import sys

import jsonschema

schema, *documents = json.load(open(sys.argv[1], encoding="utf-8"))
jsonschema.Draft202012Validator.check_schema(schema)
validator = jsonschema.Draft202012Validator(schema)
for document in documents:
    print("valid" if validator.is_valid(document) else "refused")
