#!/bin/sh
# Makes the one migration of the first schema anew, while no released version has it yet. Run from the repository's root.
set -eu
project=src/RehabTrack.Records.Sqlite
rm -rf "$project/Migrations"
dotnet tool run dotnet-ef migrations add Initial --project "$project" --startup-project "$project"
cd "$project/Migrations"
made=$(basename "$(ls ./*_Initial.cs)" _Initial.cs)
for file in "${made}"_Initial*.cs; do mv "$file" "20261125000000${file#"$made"}"; done
sed -i "s/$made/20261125000000/" ./*.cs
