# Built from the sources, run by a user without rights. See docs/operations.md.
FROM mcr.microsoft.com/dotnet/sdk:10.0 AS build
WORKDIR /source
COPY . .
RUN dotnet publish src/RehabTrack.Web --configuration Release --output /app

FROM mcr.microsoft.com/dotnet/aspnet:10.0
RUN mkdir /data && chown $APP_UID:$APP_UID /data && chmod 700 /data
WORKDIR /app
COPY --from=build /app .
ENV ASPNETCORE_ENVIRONMENT=Production
ENV ASPNETCORE_URLS=http://*:8080
ENV ASPNETCORE_HTTP_PORTS=
ENV REHABTRACK_DATA=/data
ENV DOTNET_EnableDiagnostics=0
USER $APP_UID
VOLUME /data
EXPOSE 8080
STOPSIGNAL SIGTERM
ENTRYPOINT ["dotnet", "RehabTrack.Web.dll"]
